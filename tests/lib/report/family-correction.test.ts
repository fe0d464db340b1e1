import { describe, expect, it } from "vitest";
import type { LookVerdict, TrackVerdict } from "@/lib/domain/track-verdict";
import { familyCorrection } from "@/lib/report/family-correction";

const look = (date: string, verdict: LookVerdict["verdict"], listed: boolean): LookVerdict => ({
  ...{ date, verdict, listed, logBayesFactor: 0, directionUp: 0.5 },
});
/** Listed from 3 May to 31 May, and by 1 June no more. */
const LOOKS = [
  look("2026-04-05", "open", false),
  look("2026-05-03", "gain", true),
  look("2026-05-17", "gain", true),
  look("2026-06-01", "open", false),
  look("2026-06-15", "open", false),
];
const verdict = (over: Partial<TrackVerdict> = {}): TrackVerdict =>
  ({ verdict: "open", change: null, moved: null, looks: LOOKS, ...over }) as TrackVerdict;
const corrected = (openings: readonly string[], today = "2026-06-20", over: Partial<TrackVerdict> = {}) =>
  familyCorrection(verdict(over), { openings, told: [] }, { fundamentalId: "hinge", today });

describe("what a page said and later films don't bear out", () => {
  it("is taken back with the last day on which somebody read it", () => {
    expect(corrected(["2026-05-20", "2026-05-04", "2026-04-06"])).toEqual({
      ...{ kind: "corrected", said: "better", on: "2026-05-20" },
    });
    expect(corrected(["2026-05-03"])).toMatchObject({ on: "2026-05-03" });
  });

  it("is nothing where nobody read it: before it stood there, or from the day on which it did no more", () => {
    expect([corrected([]), corrected(["2026-05-02"]), corrected(["2026-06-01"])]).toEqual([null, null, null]);
  });

  it("stands for 14 days from the first page that showed it", () => {
    const read = ["2026-05-20", "2026-06-02", "2026-06-10"];
    expect(corrected(read, "2026-06-16")).not.toBeNull();
    expect(corrected(read, "2026-06-17")).toBeNull();
  });

  it("is nothing while a change is told, nor after one of which nothing is known since", () => {
    const slip = { verdict: "slip", listed: true, change: {} } as unknown as Partial<TrackVerdict>;
    expect(corrected(["2026-05-20"], "2026-06-20", slip)).toBeNull();
    expect(corrected(["2026-05-20"], "2026-06-20", { looks: LOOKS.slice(0, 3) })).toBeNull();
    expect(corrected(["2026-05-20"], "2026-06-20", { looks: undefined })).toBeNull();
  });

  it("a slip that was told is taken back as one", () => {
    const looks = LOOKS.map((each) => (each.verdict === "gain" ? { ...each, verdict: "slip" as const } : each));
    expect(corrected(["2026-05-20"], "2026-06-20", { looks })).toMatchObject({ said: "worse" });
  });
});
