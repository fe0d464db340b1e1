import { describe, expect, it } from "vitest";
import { dayNumber } from "@/lib/domain/calendar-day";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { noiseAlways, START_NOISE } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { type CurvePoint, reachCurve } from "@/lib/verdict/reach-curve";
import { flat, madeTrack } from "./made-track";

const noise = noiseAlways(startNoiseModel(START_NOISE));
const verdictOf = (track: JudgedTrack) => judgeTrack(track, noise, POLICY, "latest").verdict;
const curveOf = (track: JudgedTrack) => reachCurve(track, verdictOf(track), noise, POLICY);

/** Levels that stay at 0 up to a session, then near a gain with a scale in sessions. */
const curve = (count: number, start: number, gain: number, scale: number): number[] =>
  Array.from({ length: count }, (_, i) => (i <= start ? 0 : gain * -Math.expm1((start - i) / scale)));

function toward(low: number, levels: readonly number[]): JudgedTrack {
  const { better: _, ...track } = madeTrack(3, levels, { goal: { low, high: low + 20 } });
  return track;
}

/** As in the test of the dates: 60 from 0 with scale 6 sessions of ten days; 54 is reached 13.8 sessions after the sixth. */
const nearing = toward(54, curve(14, 5, 60, 6));
const truth = (day: number): number => {
  const sessions = (day - 20_050) / 10;
  return sessions <= 0 ? 0 : 60 * -Math.expm1(-sessions / 6);
};

describe("the learning curve behind dates", () => {
  const points = curveOf(nearing) ?? [];
  const { reach, changes } = verdictOf(nearing);

  it("goes from the last film on the old level to the last of the dates said, and not a day further", () => {
    if (reach?.kind !== "dates") throw new Error("no dates");
    expect(points[0]?.day).toBe(dayNumber(changes[0]?.from ?? ""));
    expect(points.at(-1)?.day).toBe(dayNumber(reach.to));
    const days = points.map((point) => point.day);
    expect(days).toEqual([...days].sort((a, b) => a - b));
  });

  it("holds the true level at most of its points, its middle between its edges", () => {
    for (const { low, middle, high } of points) expect(low <= middle && middle <= high).toBe(true);
    const held = points.filter(({ day, low, high }) => truth(day) >= low && truth(day) <= high);
    expect(held.length / points.length).toBeGreaterThanOrEqual(0.7);
  });

  it("rises, and is in more doubt ahead of the last film than at it", () => {
    const middle = points.map((point) => point.middle);
    expect(middle.at(-1)).toBeGreaterThan(middle[0] ?? Number.NaN);
    const width = (point: CurvePoint | undefined): number => (point ? point.high - point.low : Number.NaN);
    const last = points.findLast((point) => point.day <= 20_130);
    expect(width(points.at(-1))).toBeGreaterThan(width(last));
  });

  it("by the end of the dates the edge is as good as reached: the middle lies beyond it", () => {
    expect(points.at(-1)?.middle).toBeGreaterThan(54);
  });

  it("in other units and from another zero it is the same curve", () => {
    const { readerSd = POLICY.readerSd } = nearing;
    const altered: JudgedTrack = {
      ...nearing,
      goal: { low: 54 * 4 - 7, high: 74 * 4 - 7 },
      readerSd: readerSd * 4,
      sessions: nearing.sessions.map((session) => ({
        ...session,
        captureSd: session.captureSd * 4,
        swings: session.swings.map((value) => value * 4 - 7),
      })),
    };
    const other = curveOf(altered) ?? [];
    expect(other.map((point) => point.day)).toEqual(points.map((point) => point.day));
    other.forEach((point, at) => {
      expect((point.middle + 7) / 4).toBeCloseTo(points[at]?.middle ?? Number.NaN, 2);
    });
  });

  it("the same track gives the same curve", () => expect(curveOf(nearing)).toEqual(points));
});

describe("where no curve is drawn", () => {
  it("a gain that stopped short: up to the last film, not beyond", () => {
    const short = toward(60, [...flat(8, 0), ...flat(14, 30)]);
    expect(verdictOf(short).reach?.kind).toBe("stopped-short");
    expect(curveOf(short)?.at(-1)?.day).toBe(20_000 + 10 * 21);
  });

  it("no dates said, nothing proved, no goal: none", () => {
    expect(curveOf(madeTrack(1, flat(10, 0)))).toBeNull();
    expect(curveOf(toward(60, [...flat(8, 0), 30, 30]))).toBeNull();
    expect(curveOf({ ...nearing, sessions: [] })).toBeNull();
  });
});
