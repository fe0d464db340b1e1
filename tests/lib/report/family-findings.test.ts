import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { type FamilyTrack, familyFindings, familyReader } from "@/lib/report/family-findings";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
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

const told = (tracks: readonly FamilyTrack[], birthYear: number | null = null) =>
  familyFindings(words, tracks, { student: { hand: "right", birthYear }, today: TODAY });

describe("what a family is told of what is measured", () => {
  it("a gain and a slip only where they stand on the roster's list: by their own evidence alone they are being checked", () => {
    const gain = { verdict: "gain", change: CHANGE };
    const slip = { verdict: "slip", change: { ...CHANGE, verdict: "slip" } };
    expect(told([track("hinge", { ...gain, listed: true }), track("foot-line", { ...slip, listed: true })])).toEqual({
      good: [],
      changed: [
        "How your wrists bend is better than in March, and it has stayed better.",
        "Where your feet point is not as good as in March. That happens, and we work on it.",
      ],
      unsure: [],
      more: 0,
    });
    for (const listed of [false, undefined])
      expect(told([track("hinge", { ...gain, listed }), track("foot-line", { ...slip, listed })])).toEqual({
        good: [],
        changed: [],
        unsure: [
          "How your wrists bend looks better; we are checking.",
          "Where your feet point looks different; we are checking.",
        ],
        more: 0,
      });
  });

  it("a change on the list that later films leave doubtful is being checked, as the coach is told that a family reads", () => {
    const doubtful = { logBayesFactor: 2, directionUp: 1, limit: 3, noChange: 0.2, priorChange: 0.2 };
    const gain = track("hinge", { verdict: "gain", change: CHANGE, listed: true, evidence: doubtful });
    expect(told([gain]).changed).toEqual([]);
    expect(told([gain]).unsure).toEqual(["How your wrists bend looks better; we are checking."]);
  });

  it("a proved move that is neither better nor worse is called neither, and only from the list", () => {
    const moved = { verdict: "steady", change: { ...CHANGE, moved: "through" }, moved: "through" };
    expect(told([track("hip-sway", { ...moved, listed: true })]).changed).toEqual([
      "How your hips move on the way back has changed: it was too far to one side, and now it is too far to the other.",
    ]);
    expect(told([track("hip-sway", { ...moved, moved: "within", listed: true })]).changed[0]).toContain(
      "it is still good",
    );
    expect(told([track("hip-sway", { ...moved, moved: null, listed: true })]).changed[0]).toContain("no closer");
    expect(told([track("hip-sway", moved)])).toMatchObject({
      changed: [],
      unsure: [expect.stringContaining("we are checking")],
    });
  });

  it("what is owned is good and for how long, but not while it is being looked at again", () => {
    const owned = { verdict: "steady", ownedSince: "2026-05-23" };
    expect(told([track("hinge", owned)]).good).toEqual(["How your wrists bend is still good: 16 weeks now."]);
    const watched = told([track("hinge", { ...owned, watch: { since: "2026-09-01" } })]);
    expect(watched).toMatchObject({
      good: [],
      changed: ["How your wrists bend is still the same. We checked it on 4 videos."],
    });
  });

  it("three things that can't be told yet are named, each with what would show it, and the rest is counted", () => {
    const open = ["trail-v", "lead-v", "foot-line", "hinge", "hip-sway"].map((id, at) =>
      track(id, { settleIfReal: at === 0 ? { sessions: 2 } : null }),
    );
    const { unsure, more } = told(open);
    expect([unsure.length, more]).toEqual([3, 2]);
    expect(unsure[0]).toContain("2 more videos on different days will probably show it, if");
    expect(unsure[1]).toBe("We can’t tell yet about the grip of your left hand.");
  });

  it("the youngest are told two things at most, the good first, no number and no slip", () => {
    const tracks = [
      track("trail-v", { verdict: "slip", listed: true, change: { ...CHANGE, verdict: "slip" } }),
      track("lead-v", {}),
      track("foot-line", { verdict: "steady", ownedSince: "2026-05-23" }),
      track("hinge", { verdict: "gain", listed: true, change: CHANGE }),
      track("hip-sway", { verdict: "steady" }),
    ];
    expect(told(tracks, 2018)).toEqual({
      good: ["Where your feet point is still good."],
      changed: ["How your wrists bend is better than before, and it has stayed better."],
      unsure: [],
      more: 0,
    });
    expect(JSON.stringify(told(tracks, 2016))).toContain("not as good");
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
