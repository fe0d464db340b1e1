import { describe, expect, it } from "vitest";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { ComparedTrack } from "@/lib/domain/compared-track";
import { findEquallyBad, findFirst } from "@/lib/drills/find-episodes";
import { Gathering } from "@/lib/drills/gathering";
import { scoredTrack } from "@/lib/drills/scored-track";
import { POLICY } from "@/lib/verdict/policy";
import { dayOf, madeCompared } from "./made-academy";

function first(track: ComparedTrack, length: number | null = null) {
  return findFirst(track, scoredTrack(track, POLICY), length, POLICY);
}

function episodeOf(track: ComparedTrack, length: number | null = null) {
  const found = first(track, length);
  if (found.kind !== "episode") throw new Error(JSON.stringify(found));
  return found.episode;
}

const rising = Array.from({ length: 30 }, (_, at) => at);

describe("the first stretch of a track", () => {
  it("a drill: the run of three, level and slope before it, the next eight sessions, days from the run", () => {
    const found = episodeOf(madeCompared("a", rising, { drills: [{ drill: "d", start: dayOf(10) }] }));
    expect(found).toMatchObject({ drill: "d", marked: false, sessions: 8, start: dayNumber(dayOf(10)), higher: 1 });
    expect(found.score.before).toEqual({ run: 8, earlier: { mean: 3, slope: 1 } });
    expect(found.score.shorter.run).toBe(8.5);
    expect(found.score.after).toBe(13.5);
    expect(found.toMiddle).toBe(4.5 * 7);
  });
  it("the drill that began first counts, and another within the sessions is told", () => {
    const drills = [
      { drill: "late", start: dayOf(12) },
      { drill: "early", start: dayOf(10) },
    ];
    expect(episodeOf(madeCompared("a", rising, { drills }))).toMatchObject({ drill: "early", overlapped: true });
    const far = [
      { drill: "early", start: dayOf(10) },
      { drill: "late", start: dayOf(19) },
    ];
    expect(episodeOf(madeCompared("a", rising, { drills: far })).overlapped).toBe(false);
  });
  it("waiting before a drill: only until it ends or the drill begins; with no session in it the drill counts", () => {
    const drills = [{ drill: "d", start: dayOf(15) }];
    const waited = madeCompared("a", rising, { drills, waiting: [{ from: dayOf(10), to: dayOf(12) }] });
    expect(episodeOf(waited)).toMatchObject({ drill: null, marked: true, sessions: 3 });
    const longer = madeCompared("a", rising, { drills, waiting: [{ from: dayOf(10), to: dayOf(29) }] });
    expect(episodeOf(longer)).toMatchObject({ drill: null, sessions: 5 });
    const between = [{ from: "2026-03-17", to: "2026-03-18" }];
    expect(episodeOf(madeCompared("a", rising, { drills, waiting: between })).drill).toBe("d");
  });
  it("no session before, or none since: left out and why; nothing on file: without", () => {
    const start = (day: string) => madeCompared("a", [1, 2, 3], { drills: [{ drill: "d", start: day }] });
    expect(first(start(dayOf(0)))).toEqual({ kind: "left-out", why: "no-before" });
    expect(first(start(dayOf(9)))).toEqual({ kind: "left-out", why: "no-after" });
    expect(first(madeCompared("a", [1, 2, 3]))).toEqual({ kind: "without" });
  });
  it("a history too short for a run and a level has the run alone", () => {
    const found = episodeOf(madeCompared("a", rising, { drills: [{ drill: "d", start: dayOf(4) }] }));
    expect(found.score.before).toEqual({ run: 2, earlier: null });
  });
});

describe("what stays", () => {
  const drills = [{ drill: "d", start: dayOf(5), end: dayOf(8) }];

  it("used sessions 21 to 120 days after the end, rested a week or not known to be otherwise", () => {
    // Weeks 11 to 25 after the first lie 21 to 119 days after the end.
    expect(episodeOf(madeCompared("a", rising, { drills })).score.retained).toBe(18);
    const sessions = madeCompared("a", rising).sessions.map((session, at) =>
      at === 12 ? { ...session, daysSincePractice: 6 } : at === 14 ? { ...session, daysSincePractice: 7 } : session,
    );
    const found = episodeOf(madeCompared("a", [], { drills, sessions }));
    expect(found.score.retained).toBeCloseTo((18 * 15 - 12) / 14, 12);
  });
  it("without an end, from the last practice; where that isn't known, nothing is said", () => {
    const open = [{ drill: "d", start: dayOf(5) }];
    expect(episodeOf(madeCompared("a", rising, { drills: open })).score.retained).toBeNull();
    const sessions = madeCompared("a", rising).sessions.map((session, at) =>
      at >= 10 ? { ...session, daysSincePractice: 7 * (at - 8) } : session,
    );
    expect(episodeOf(madeCompared("a", [], { drills: open, sessions })).score.retained).toBe(18);
  });
  it("of who waited, as long after as a drill mostly lasts, and before any drill", () => {
    const waiting = [{ from: dayOf(5), to: dayOf(7) }];
    expect(episodeOf(madeCompared("a", rising, { waiting }), 21).score.retained).toBe(18);
    const later = madeCompared("a", rising, { waiting, drills: [{ drill: "d", start: dayOf(13) }] });
    expect(episodeOf(later, 21).score.retained).toBe(11.5);
    expect(episodeOf(later, null).score.retained).toBeNull();
  });
});

describe("an equally bad run without a drill", () => {
  it("is the first that is as deep, and begins after its last session", () => {
    const track = madeCompared("a", [5, 5, 5, 5, 4, 4, 3, 3, 3, 6, 6, 6]);
    const sessions = scoredTrack(track, POLICY);
    const found = findEquallyBad(track, sessions, 1.2, null, POLICY);
    expect(found).toMatchObject({ drill: null, marked: false, start: dayNumber(dayOf(6)) + 1, sessions: 5 });
    expect(findEquallyBad(track, sessions, 3, null, POLICY)).toBeNull();
  });
  it("what stays without a drill is measured from as long after the run as a drill mostly ends", () => {
    // The run's last session is the 6th; a fortnight later something would have ended, and 21 days after that is the 11th.
    const track = madeCompared("a", [5, 5, 5, 5, 4, 4, 3, 9, 9, 9, 9, 6, 7]);
    const found = findEquallyBad(track, scoredTrack(track, POLICY), 1.2, 14, POLICY);
    expect(found?.score.retained).toBe(6.5);
    expect(found?.toRetained).toBe(5.5 * 7);
  });
  it("through both passes: a drill begun six days after the run and one not begun are measured over the same days", () => {
    const values = [5, 5, 5, 5, 4, 4, 3, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6];
    const [start, end] = [6, 17].map((days) => dayFromNumber(dayNumber(dayOf(6)) + days)) as [string, string];
    const gathering = new Gathering(POLICY);
    const tracks = [
      madeCompared("on", values, { drills: [{ drill: "d", start, end }] }),
      madeCompared("without", values),
    ];
    for (const track of tracks) gathering.takeFirst(track);
    for (const track of tracks) gathering.takeWithout(track);
    const { onDrills, without } = gathering.gathered();
    expect([onDrills[0]?.toRetained, without[0]?.toRetained]).toEqual([8 * 7, 8 * 7]);
  });
});

describe("which way is better", () => {
  const scores = (given: Partial<ComparedTrack>) =>
    scoredTrack(madeCompared("a", [1, 5, 9], { better: undefined, ...given }), POLICY).map(({ score }) => score);

  it("as stated; else toward an open goal; else nearer to the band, with nothing gained by going through it; else up", () => {
    expect(scores({ better: "down", goal: { low: 8, high: null } })).toEqual([-1, -5, -9]);
    expect(scores({ goal: { low: null, high: 2 } })).toEqual([-1, -5, -9]);
    expect(scores({ goal: { low: 3, high: null } })).toEqual([1, 5, 9]);
    expect(scores({ goal: { low: 4, high: 6 } })).toEqual([-3, -0, -3]);
    expect(scores({})).toEqual([1, 5, 9]);
  });
});
