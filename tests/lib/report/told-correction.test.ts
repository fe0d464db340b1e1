import { describe, expect, it } from "vitest";
import type { Told, ToldFinding } from "@/lib/domain/told";
import type { LookVerdict, ProvedChange, TrackVerdict } from "@/lib/domain/track-verdict";
import { toldCorrection } from "@/lib/report/told-correction";

const look = (date: string, listed = false, verdict: LookVerdict["verdict"] = "open"): LookVerdict => ({
  ...{ date, verdict, listed, logBayesFactor: 0, directionUp: 0.5 },
});
const LOOKS = [look("2026-04-05"), look("2026-05-03", true, "gain"), look("2026-06-01")];
const verdict = (over: Partial<TrackVerdict> = {}): TrackVerdict =>
  ({ verdict: "open", change: null, changes: [], moved: null, looks: LOOKS, ...over }) as unknown as TrackVerdict;
const change = (of: "gain" | "slip", from: string, to: string, provedOn: string): ProvedChange =>
  ({ verdict: of, from, to, provedOn, moved: null }) as unknown as ProvedChange;

const BETTER: ToldFinding = {
  ...{ fundamentalId: "hinge", kind: "changed", said: "better" },
  change: { from: "2026-04-05", to: "2026-04-20" },
};
const BACK: ToldFinding = { ...BETTER, kind: "corrected", change: null };
const told = (day: string, findings: Told["findings"] = [BETTER], voidedAt: string | null = null): Told => ({
  ...{ id: day, clubGroup: "iron", kind: "message", text: "…", findings, day, who: "Bo", recordedAt: day, voidedAt },
});
const corrected = (sent: readonly Told[], over: Partial<TrackVerdict> = {}, today = "2026-06-20") =>
  toldCorrection(verdict(over), sent, "hinge", today);

describe("what was told in a text and isn't seen any more", () => {
  it("is taken back with the day on which it was last told", () => {
    expect(corrected([told("2026-05-10"), told("2026-05-20")])).toEqual({
      ...{ kind: "corrected", said: "better", on: "2026-05-20", by: "told", videos: "yes" },
    });
    expect(corrected([told("2026-06-10")])).toMatchObject({ on: "2026-06-10", videos: "no" });
    const steady = { verdict: "steady" } as const;
    expect(corrected([told("2026-05-20")], steady)).not.toBeNull();
  });

  it("is nothing where nothing was told, of another thing, taken back, unreadable, or of a day to come", () => {
    const other = { ...BETTER, fundamentalId: "hip-sway" };
    for (const sent of [
      [],
      [told("2026-05-20", [other])],
      [told("2026-05-20", [BETTER], "2026-05-21")],
      [told("2026-05-20", null)],
      [told("2026-07-20")],
    ])
      expect(corrected(sent)).toBeNull();
  });

  it("is nothing while the same is told, nor where another change followed one that stood on the list", () => {
    const gain = { verdict: "gain", listed: true, change: {} } as unknown as Partial<TrackVerdict>;
    expect(corrected([told("2026-05-20")], gain)).toBeNull();
    const first = change("gain", "2026-04-10", "2026-04-18", "2026-05-03");
    const second = change("slip", "2026-06-01", "2026-06-05", "2026-06-10");
    const slip = { verdict: "slip", listed: true, change: second, changes: [first, second] } as const;
    expect(corrected([told("2026-05-20")], slip)).toBeNull();
    // A slip alone, or one after a gain of other days, bears out no gain.
    expect(corrected([told("2026-05-20")], { ...slip, changes: [second] })).not.toBeNull();
    const earlier = change("gain", "2026-01-10", "2026-01-18", "2026-02-03");
    expect(corrected([told("2026-05-20")], { ...slip, changes: [earlier, second] })).not.toBeNull();
  });

  it("is nothing where the thing was begun anew since: what was told then can't be judged by what came after", () => {
    expect(corrected([told("2026-05-20")], { looks: [look("2026-06-01")] })).toBeNull();
    expect(corrected([told("2026-05-20")], { looks: undefined })).toBeNull();
  });

  it("stands for 14 days from the first text that took it back, and anew where it was told anew", () => {
    const sent = [told("2026-05-20"), told("2026-06-02", [BACK]), told("2026-06-10", [BACK])];
    expect(corrected(sent, {}, "2026-06-16")).not.toBeNull();
    expect(corrected(sent, {}, "2026-06-17")).toBeNull();
    expect(corrected([...sent, told("2026-06-15")], {}, "2026-06-17")).toMatchObject({ on: "2026-06-15" });
  });
});
