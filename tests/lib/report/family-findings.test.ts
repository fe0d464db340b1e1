import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { type FamilyTrack, familyReader, findingOf } from "@/lib/report/family-findings";

const TODAY = "2026-09-12";
const CHANGE = { verdict: "gain", from: "2026-04-06", to: "2026-04-20", provedOn: "2026-05-02" };
const QUIET: Partial<TrackVerdict> = {
  change: null,
  moved: null,
  ownedSince: null,
  watch: null,
  settleIfReal: null,
  evidence: { logBayesFactor: 8, directionUp: 1, limit: 3, noChange: 0.01, priorChange: 0.2 },
};

function track(id: string, over: Readonly<Record<string, unknown>>): FamilyTrack {
  const fundamental = BUILT_IN.find((each) => each.id === id);
  const sessions = ["2026-03-01", "2026-03-28", "2026-04-06", "2026-05-02"].map((day) => ({
    session: { day },
    apart: null,
  }));
  return {
    history: { fundamental, sessions },
    verdict: { ...QUIET, verdict: "open", ...over },
  } as unknown as FamilyTrack;
}

const kindOf = (id: string, over: Readonly<Record<string, unknown>>) => findingOf(track(id, over), TODAY);

describe("what a family is told of what is measured", () => {
  it("a gain and a slip only where they stand on the roster's list: by their own evidence alone they are being checked", () => {
    const gain = { verdict: "gain", change: CHANGE };
    const slip = { verdict: "slip", change: { ...CHANGE, verdict: "slip" } };
    expect(kindOf("hinge", { ...gain, listed: true })).toEqual({ kind: "better", before: "2026-03-28" });
    expect(kindOf("foot-line", { ...slip, listed: true })).toEqual({ kind: "worse", before: "2026-03-28" });
    for (const listed of [false, undefined]) {
      expect(kindOf("hinge", { ...gain, listed })).toEqual({ kind: "checking-better" });
      expect(kindOf("foot-line", { ...slip, listed })).toEqual({ kind: "checking" });
    }
  });

  it("a change on the list that later films leave doubtful is being checked, as the coach is told that a family reads", () => {
    const doubtful = { logBayesFactor: 2, directionUp: 1, limit: 3, noChange: 0.2, priorChange: 0.2 };
    const gain = { verdict: "gain", change: CHANGE, listed: true, evidence: doubtful };
    expect(kindOf("hinge", gain)).toEqual({ kind: "checking-better" });
  });

  it("a proved move that is neither better nor worse is called neither, and only from the list", () => {
    const moved = { verdict: "steady", change: { ...CHANGE, moved: "through" }, moved: "through" };
    expect(kindOf("hip-sway", { ...moved, listed: true }).kind).toBe("through");
    expect(kindOf("hip-sway", { ...moved, moved: "within", listed: true }).kind).toBe("within");
    expect(kindOf("hip-sway", { ...moved, moved: null, listed: true }).kind).toBe("elsewhere");
    expect(kindOf("hip-sway", { ...moved, change: { ...CHANGE, verdict: "steady" } }).kind).toBe("checking");
  });

  it("what is owned is good and for how long, but not while it is being looked at again", () => {
    const owned = { verdict: "steady", ownedSince: "2026-05-23" };
    expect(kindOf("hinge", owned)).toEqual({ kind: "good", weeks: 16 });
    expect(kindOf("hinge", { ...owned, watch: { since: "2026-09-01" } })).toEqual({ kind: "same", videos: 4 });
  });

  it("what is open is told with the videos that would show it", () => {
    expect(kindOf("trail-v", { settleIfReal: { sessions: 2 } })).toEqual({ kind: "open", videos: 2 });
    expect(kindOf("trail-v", {})).toEqual({ kind: "open", videos: null });
  });

  it("young until nine is surely reached by the year of birth; unknown is not under nine", () => {
    expect([2018, 2017, 2016, 1980, null].map((birthYear) => familyReader({ birthYear }, TODAY))).toEqual([
      "young",
      "young",
      "other",
      "other",
      "other",
    ]);
    // Born in December 2017, eight is what a child is all of 2026.
    expect(["2026-12-31", "2027-01-01"].map((day) => familyReader({ birthYear: 2017 }, day))).toEqual([
      "young",
      "other",
    ]);
  });
});
