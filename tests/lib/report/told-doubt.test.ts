import { describe, expect, it } from "vitest";
import type { Told, ToldFinding } from "@/lib/domain/told";
import { toldDoubt } from "@/lib/report/told-doubt";
import { saidOf } from "./story-cases";

const DOUBTFUL = saidOf("better, doubtful since it was read");
const CLAIM: ToldFinding = {
  ...{ fundamentalId: "hinge", kind: "changed", said: "better" },
  change: { from: "2026-07-01", to: "2026-07-18" },
};
const told = (day: string, finding: Partial<ToldFinding> = {}, voidedAt: string | null = null): Told => ({
  ...{ id: day, clubGroup: "iron", kind: "message", text: "…", day, who: "Bo", recordedAt: day, voidedAt },
  findings: [{ ...CLAIM, ...finding }],
});
const doubt = (openings: readonly string[], sent: readonly Told[] = [], verdict = DOUBTFUL) =>
  toldDoubt(verdict, { openings, told: sent }, { fundamentalId: "hinge", today: "2026-09-12" });

describe("a change that was told for sure and is less sure now", () => {
  it("was read on a page while only the film that proved it had come, or stood in a text of the same change", () => {
    expect(doubt(["2026-05-30", "2026-06-10", "2026-09-10"])).toEqual({ said: "better", on: "2026-06-10" });
    expect(doubt([], [told("2026-08-10")])).toEqual({ said: "better", on: "2026-08-10" });
    expect(doubt(["2026-06-10"], [told("2026-08-10")])?.on).toBe("2026-08-10");
  });

  it("is nothing where nobody was told: not opened then, another change, another thing, taken back, or still to come", () => {
    expect(doubt(["2026-09-10"])).toBeNull();
    for (const sent of [
      told("2026-08-10", { change: { from: "2026-01-01", to: "2026-01-10" } }),
      told("2026-08-10", { said: "worse" }),
      told("2026-08-10", { fundamentalId: "hip-sway" }),
      told("2026-08-10", { kind: "corrected", change: null }),
      told("2026-08-10", {}, "2026-08-11"),
      told("2026-10-10"),
    ])
      expect(doubt([], [sent])).toBeNull();
  });

  it("is nothing while it is as sure as the list, or proved for its track alone", () => {
    const { looks } = DOUBTFUL;
    expect(doubt(["2026-06-10"], [], { ...saidOf("better, listed"), looks })).toBeNull();
    expect(doubt(["2026-06-10"], [told("2026-08-10")], { ...DOUBTFUL, listed: false })).toBeNull();
  });
});
