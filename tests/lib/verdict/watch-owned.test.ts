import { describe, expect, it } from "vitest";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { JudgedSession, JudgedTrack } from "@/lib/domain/judged-track";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { judgedSeries } from "@/lib/verdict/judged-series";
import { learnNoise, noiseAlways } from "@/lib/verdict/noise";
import { type OwnedLooks, ownedLooks } from "@/lib/verdict/owned-looks";
import { POLICY } from "@/lib/verdict/policy";
import { openTrack } from "@/lib/verdict/track-state";
import { flat, madeTrack } from "./made-track";

const NOISE = learnNoise(
  Array.from({ length: 30 }, (_, seed) => judgedSeries(madeTrack(900 + seed, flat(12, 0)), POLICY).series),
  POLICY,
);

/** Sd of one session mean of a made track: day 1, camera 1, swing 2 of five; 1.67. */
const U = Math.sqrt(1 + 1 + 4 / 5);
const GOAL = { low: 45, high: null };

/** A track about 50, inside its goal and owned from the third session on, thirteen of them; then so far off. */
function owned(offs: readonly number[], over: Partial<JudgedTrack> = {}): JudgedTrack {
  const made = madeTrack(41, [...flat(13, 50), ...offs.map((off) => 50 + off)], { better: undefined, goal: GOAL });
  return { ...made, sessions: made.sessions.map((session, i) => settled(session, i, offs)), ...over };
}

/** The sessions after the thirteenth lie just where they are put, swings about them as before. */
function settled(session: JudgedSession, i: number, offs: readonly number[]): JudgedSession {
  const rested = { ...session, date: dayFromNumber(20_000 + 11 * i), daysSincePractice: 10 };
  const off = offs[i - 13];
  if (off === undefined) return rested;
  return { ...rested, swings: [-2.4, -1.2, 0, 1.2, 2.4].map((swing) => 50 + off + swing) };
}

function watched(track: JudgedTrack): readonly OwnedLooks[] {
  return ownedLooks(openTrack(track, noiseAlways(NOISE), POLICY), POLICY);
}

const alarms = (track: JudgedTrack): readonly (number | null)[] =>
  watched(track)
    .slice(13)
    .map((look) => look.watch?.sessions ?? null);

describe("the watch over an owned track", () => {
  it("two sessions 3.5 U below are alarmed at the second, since the first, by about 5.9; and it is no proof yet", () => {
    const track = owned([-3.5 * U, -3.5 * U]);
    expect(alarms(track)).toEqual([null, 2]);
    const { verdict } = judgeTrack(track, noiseAlways(NOISE), POLICY, "latest");
    expect(verdict.watch).toMatchObject({ since: track.sessions[13]?.date, sessions: 2, direction: "down" });
    expect(verdict.watch?.raisedOn).toBe(track.sessions[14]?.date);
    expect(verdict.watch?.size.low95).toBeLessThan(-3.5 * U);
    expect(verdict.watch?.size.high95).toBeGreaterThan(-3.5 * U);
    expect(verdict.watch?.logBayesFactor).toBeGreaterThanOrEqual(POLICY.watchLimit);
  });

  it("one mildly bad day is none, nor is it with a good one after it", () => {
    expect(alarms(owned([-2.5 * U]))).toEqual([null]);
    expect(alarms(owned([-3 * U, 0, 0]))).toEqual([null, null, null]);
  });

  it("one day far outside is, and usual days after it take it back", () => {
    expect(alarms(owned([-7 * U]))).toEqual([1]);
    expect(alarms(owned([-7 * U, 0, 0, 0])).at(-1)).toBeNull();
  });

  it("the wrong way never: up is no loss of a level that only has to be above 45", () => {
    expect(alarms(owned([4 * U, 5 * U, 5 * U, 5 * U]))).toEqual([null, null, null, null]);
    const down = owned([4 * U, 5 * U, 5 * U], { goal: { low: null, high: 55 } });
    expect(watched(down).slice(13).at(-1)?.watch?.direction).toBe("up");
  });

  it("what is said to be better goes before the goal", () => {
    expect(alarms(owned([-5 * U, -5 * U], { better: "up" })).at(-1)).toBe(2);
    expect(alarms(owned([-5 * U, -5 * U], { better: "down" })).at(-1)).toBeNull();
  });

  it("a track that isn't owned is not watched: no rest from practice, or no goal", () => {
    const track = owned([-4 * U, -4 * U]);
    const tired = { ...track, sessions: track.sessions.map((each) => ({ ...each, daysSincePractice: 1 })) };
    expect(alarms(tired)).toEqual([null, null]);
    expect(alarms({ ...track, goal: undefined })).toEqual([null, null]);
  });

  it("sessions set aside don't count", () => {
    const track = owned([-3.5 * U, -3.5 * U]);
    const aside = (at: number) => ({
      ...track,
      sessions: track.sessions.map((each, i) => (i === at ? { ...each, use: false } : each)),
    });
    expect(alarms(aside(14))).toEqual([null, null]);
    expect(alarms(aside(13))).toEqual([null, null]);
  });

  it("one film after a break of more than six weeks raises none, however far; the next one does", () => {
    const later = (track: JudgedTrack, by: number): JudgedTrack => ({
      ...track,
      sessions: track.sessions.map((each, i) =>
        i < 13 ? each : { ...each, date: dayFromNumber(dayNumber(each.date) + by) },
      ),
    });
    expect(alarms(owned([-7 * U, -7 * U]))).toEqual([1, 2]);
    expect(alarms(later(owned([-7 * U, -7 * U]), 31))).toEqual([1, 2]);
    expect(alarms(later(owned([-7 * U, -7 * U]), 32))).toEqual([null, 2]);
  });

  it("stays when the loss is proved and the track no longer owned, and ends when the level is back", () => {
    const looks = watched(owned([...flat(6, -4 * U), ...flat(8, 0)])).slice(13);
    const lost = looks.findIndex((look) => look.since === null);
    expect(lost).toBeGreaterThan(0);
    expect(looks[lost]?.watch).not.toBeNull();
    expect(looks[5]?.watch?.sessions).toBe(6);
    expect(looks.at(-1)?.watch).toBeNull();
  });

  it("a prefix of the track says the same at each of its looks", () => {
    const track = owned([0, -3.5 * U, -3.5 * U, 0, -7 * U, 0, 0]);
    const whole = watched(track);
    for (const count of [1, 3, 13, 14, 15, 16, 17, 18, 19])
      expect(watched({ ...track, sessions: track.sessions.slice(0, count) })).toEqual(whole.slice(0, count));
  });

  it("a goal set after the looks leaves their alarms as they were, though under it down leads nowhere away", () => {
    const track = owned([-3.5 * U, -3.5 * U, -3.5 * U]);
    const today = dayFromNumber(dayNumber(track.sessions.at(-1)?.date ?? "") + 1);
    const goal = { low: null, high: 60 };
    const goals = [
      { from: "0001-01-01", ...GOAL },
      { from: today, ...goal },
    ];
    const then = watched(track);
    expect(then.at(-2)?.watch?.sessions).toBe(2);
    expect(watched({ ...track, goal, goals }).slice(0, -1)).toEqual(then.slice(0, -1));
    expect(watched({ ...track, goal }).at(-2)?.watch).toBeNull();
  });

  it("in another unit it says the same in that unit", () => {
    const track = owned([-3.5 * U, -3.5 * U]);
    const by = 4;
    const scaled: JudgedTrack = {
      ...track,
      readerSd: by,
      goal: { low: 45 * by, high: null },
      sessions: track.sessions.map((each) => ({
        ...each,
        captureSd: each.captureSd * by,
        swings: each.swings.map((value) => value * by),
      })),
    };
    const noise = {
      ...NOISE,
      cells: NOISE.cells.map((cell) => ({ ...cell, daySd: cell.daySd * by })),
      replicateSd: NOISE.replicateSd === null ? null : NOISE.replicateSd * by,
    };
    const [before, after] = [
      watched(track).at(-1)?.watch,
      ownedLooks(openTrack(scaled, noiseAlways(noise), POLICY), POLICY).at(-1)?.watch,
    ];
    expect(after?.logBayesFactor).toBeCloseTo(before?.logBayesFactor ?? 0, 8);
    expect(after?.size.estimate).toBeCloseTo(by * (before?.size.estimate ?? 0), 6);
  });

  it("where both ways lead out of the band each has to show twice as much: the least loss that is alarmed is larger", () => {
    const least = (goal: JudgedTrack["goal"]): number => {
      let [none, some] = [2, 5];
      for (let halving = 0; halving < 6; halving++) {
        const middle = (none + some) / 2;
        if (alarms(owned([-middle * U, -middle * U], { goal })).at(-1) === null) none = middle;
        else some = middle;
      }
      return some;
    };
    expect(least({ low: 45, high: 55 })).toBeGreaterThan(least(GOAL));
  });
});
