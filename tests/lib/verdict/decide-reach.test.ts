import { describe, expect, it } from "vitest";
import { dayNumber } from "@/lib/domain/calendar-day";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { noiseAlways, START_NOISE } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { flat, madeTrack } from "./made-track";

const noise = noiseAlways(startNoiseModel(START_NOISE));
const judge = (track: JudgedTrack, policy = POLICY) => judgeTrack(track, noise, policy, "latest").verdict;
const reach = (track: JudgedTrack) => judge(track).reach;

/** Levels that stay at 0 up to a session, then near a gain with a scale in sessions. */
const curve = (count: number, start: number, gain: number, scale: number): number[] =>
  Array.from({ length: count }, (_, i) => (i <= start ? 0 : gain * -Math.expm1((start - i) / scale)));

/** A track whose goal band lies 20 wide above `low`; without `better`, the band decides. */
function toward(low: number, levels: readonly number[], over: Partial<JudgedTrack> = {}): JudgedTrack {
  const { better: _, ...track } = madeTrack(3, levels, { goal: { low, high: low + 20 }, ...over });
  return track;
}

/** 60 from 0 with scale 6 sessions of ten days from the sixth on: 54 is reached 6 ln 10 = 13.8 sessions after it. */
const nearing = toward(54, curve(14, 5, 60, 6));
const reachedOn = 20_000 + 10 * (5 + 6 * Math.log(10));

describe("a level that nears its band", () => {
  it("is given dates that hold the true one, from after the last film to before the horizon of 26 weeks", () => {
    const found = reach(nearing);
    if (found?.kind !== "dates") throw new Error(`expected dates, got ${JSON.stringify(found)}`);
    const last = 20_000 + 130;
    expect(dayNumber(found.from)).toBeGreaterThanOrEqual(last);
    expect(dayNumber(found.from)).toBeLessThanOrEqual(reachedOn);
    expect(dayNumber(found.to)).toBeGreaterThanOrEqual(reachedOn);
    expect(dayNumber(found.horizon)).toBe(last + 182);
    expect(found.chance).toBeGreaterThanOrEqual(0.8);
  });

  it("measured in other units, from another zero or upside down the dates are the same", () => {
    const altered = (by: number, shift: number): JudgedTrack => {
      const edges = [54 * by + shift, 74 * by + shift].sort((a, b) => a - b) as [number, number];
      const { readerSd = POLICY.readerSd } = nearing;
      return {
        ...nearing,
        goal: { low: edges[0], high: edges[1] },
        readerSd: readerSd * Math.abs(by),
        sessions: nearing.sessions.map((session) => ({
          ...session,
          captureSd: session.captureSd * Math.abs(by),
          swings: session.swings.map((value) => value * by + shift),
        })),
      };
    };
    const dates = (track: JudgedTrack) => {
      const found = reach(track);
      return found?.kind === "dates" ? [found.from, found.to] : found;
    };
    expect(dates(altered(4, 0))).toEqual(dates(nearing));
    expect(dates(altered(1, -200))).toEqual(dates(nearing));
    expect(dates(altered(-0.5, 30))).toEqual(dates(nearing));
  });

  it("a prefix of a longer track says what was said then, and a session set aside says nothing", () => {
    const longer = toward(54, curve(20, 5, 60, 6));
    const prefix = { ...longer, sessions: longer.sessions.slice(0, 14) };
    expect(reach(prefix)).toEqual(reach(nearing));
    const aside = { date: "2025-02-12", captureSd: 1, swings: [400], use: false };
    expect(reach({ ...nearing, sessions: [...nearing.sessions, aside] })).toEqual(reach(nearing));
  });

  it("under a horizon of three weeks the range would be too wide", () => {
    expect(judge(nearing, { ...POLICY, reachHorizon: 21 }).reach).toEqual({ kind: "unsaid", why: "too-wide" });
  });
});

describe("a level that doesn't get there", () => {
  it("a step of 20 with the band at 40 has stopped short, and is given no date", () => {
    const found = reach(toward(40, [...flat(8, 0), ...flat(8, 20)]));
    expect(found).toMatchObject({ kind: "stopped-short" });
  });

  it.each([
    ["a step to 20, edge at 22.5, less than a worthwhile change further", 22.5, [...flat(8, 0), ...flat(10, 20)]],
    ["a curve that has levelled off at 30, edge at 33", 33, curve(20, 5, 30, 2)],
  ])("%s, is close, not short", (_, low, levels) => {
    expect(reach(toward(low, levels))).toEqual({ kind: "unsaid", why: "close" });
  });

  it("two sessions after a step can't tell a pace", () => {
    expect(reach(toward(40, [...flat(8, 0), 20, 25]))).toEqual({ kind: "unsaid", why: "too-few" });
  });

  it("a slip leads away", () => {
    expect(reach(toward(10, [...flat(8, 0), ...flat(8, -20)]))).toEqual({ kind: "unsaid", why: "away" });
  });
});

describe("no question", () => {
  it.each([
    ["unchanged", toward(20, flat(14, 0))],
    ["inside", toward(30, [...flat(8, 0), ...flat(8, 40)])],
    ["from below to above the band", toward(20, [...flat(8, 0), ...flat(8, 50)])],
    ["no session", toward(20, [])],
    ["three sessions", toward(20, [0, 10, 19])],
    ["no goal", madeTrack(3, curve(14, 5, 60, 6))],
  ])("%s: null", (_, track) => {
    expect(reach(track)).toBeNull();
  });
});
