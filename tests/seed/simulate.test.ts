import { describe, expect, it } from "vitest";
import { flat, levelAt, relapse, step } from "@/seed/level-path";
import { randomFrom } from "@/seed/random";
import { roundTo, type SeasonPlan, simulateSeason, swingCounts, type TrueNoise, unevenDays } from "@/seed/simulate";

const NOISE: TrueNoise = {
  daySd: 1.5,
  correlation: 0,
  neighbour: "session",
  swingSd: 3,
  readerSd: 1,
  tails: "normal",
  spreadChange: null,
};

const SESSIONS = 40;

function plan(changed: Partial<SeasonPlan>): SeasonPlan {
  return {
    days: Array.from({ length: SESSIONS }, (_, i) => 7 * i),
    swingCounts: new Array(SESSIONS).fill(5),
    path: flat(10),
    noise: NOISE,
    camera: { kind: "drawn", sds: new Array(SESSIONS).fill(2), placements: new Array(SESSIONS).fill(null) },
    rounding: 0,
    misreading: { share: 0, size: 0 },
    oddSession: null,
    ...changed,
  };
}

function seasons(count: number, changed: Partial<SeasonPlan>) {
  return Array.from({ length: count }, (_, seed) => simulateSeason(plan(changed), randomFrom(seed, 3)));
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const variance = (values: readonly number[]): number => mean(values.map((value) => (value - mean(values)) ** 2));

/** Four standard errors of a variance from n independent normal values. */
const band = (truth: number, n: number): number => 4 * truth * Math.sqrt(2 / n);

describe("a simulated season", () => {
  it("session means waver by day, camera, swing and reader: 1.5^2 + 2^2 + (3^2 + 1^2) / 5 = 8.25", () => {
    const means = seasons(100, {}).flatMap((season) => season.map((session) => mean(session.swings)));
    expect(Math.abs(mean(means) - 10)).toBeLessThan(4 * Math.sqrt(8.25 / 4000));
    expect(Math.abs(variance(means) - 8.25)).toBeLessThan(band(8.25, 4000));
  });

  it("swings waver within a session by swing and reader: 3^2 + 1^2 = 10", () => {
    const within = seasons(50, {}).flatMap((season) =>
      season.map(({ swings }) => (variance(swings) * swings.length) / (swings.length - 1)),
    );
    expect(Math.abs(mean(within) - 10)).toBeLessThan(band(10, 2000 * 4));
  });

  it("day effects of neighbouring sessions correlate as planned, 0.3 within 4 / sqrt(4000)", () => {
    const all = seasons(100, { noise: { ...NOISE, correlation: 0.3 } });
    const pairs = all.flatMap((season) =>
      season.slice(1).map((s, i) => (s.truth.dayEffect * (season[i]?.truth.dayEffect as number)) / 1.5 ** 2),
    );
    expect(Math.abs(mean(pairs) - 0.3)).toBeLessThan(4 / Math.sqrt(4000));
  });

  it("by days, a gap of twenty correlates as the square: 0.5^2 = 0.25", () => {
    const days = Array.from({ length: SESSIONS }, (_, i) => 20 * i);
    const all = seasons(100, { days, noise: { ...NOISE, correlation: 0.5, neighbour: "ten-days" } });
    const pairs = all.flatMap((season) =>
      season.slice(1).map((s, i) => (s.truth.dayEffect * (season[i]?.truth.dayEffect as number)) / 1.5 ** 2),
    );
    expect(Math.abs(mean(pairs) - 0.25)).toBeLessThan(4 / Math.sqrt(4000));
  });

  it("sessions of one placement share one camera error, others don't", () => {
    const placements = Array.from({ length: SESSIONS }, (_, i) => (i < 20 ? "tripod" : null));
    const [season] = seasons(1, { camera: { kind: "drawn", sds: new Array(SESSIONS).fill(2), placements } });
    const errors = (season ?? []).map((session) => session.truth.cameraError);
    expect(new Set(errors.slice(0, 20)).size).toBe(1);
    expect(new Set(errors.slice(20)).size).toBe(20);
  });

  it("rounds to multiples of 5, half away from zero and never to minus zero", () => {
    const [season] = seasons(1, { rounding: 5 });
    expect((season ?? []).flatMap((s) => s.swings).every((value) => Number.isInteger(value / 5))).toBe(true);
    expect([roundTo(2.5, 5), roundTo(-2.5, 5), roundTo(-0.2, 1), roundTo(0.37, 0.1)]).toEqual([5, -5, 0, 0.4]);
    expect(Object.is(roundTo(-0.2, 1), 0)).toBe(true);
  });

  it("misreads 2 % of readings within 4 se = 0.63 % of 8000, and says which", () => {
    const all = seasons(40, { misreading: { share: 0.02, size: 8 } });
    const misread = all.flatMap((season) => season.flatMap((session) => session.truth.misread));
    expect(Math.abs(misread.length / 8000 - 0.02)).toBeLessThan(0.0063);
  });

  it("spread that grows by 1.8 makes day effects 1.8^2 = 3.24 times as variable", () => {
    const all = seasons(100, { noise: { ...NOISE, spreadChange: { from: 20, factor: 1.8 } } });
    const late = all.flatMap((season) => season.slice(20).map((session) => session.truth.dayEffect));
    expect(Math.abs(variance(late) - 3.24 * 2.25)).toBeLessThan(band(3.24 * 2.25, 2000));
  });

  it("moves one odd session and no other", () => {
    const [with_, without] = [seasons(1, { oddSession: { at: 7, by: 9 } }), seasons(1, {})];
    const moved = (with_[0] ?? []).map((s, i) => mean(s.swings) - mean(without[0]?.[i]?.swings ?? []));
    moved.forEach((by, i) => {
      expect(by).toBeCloseTo(i === 7 ? 9 : 0, 9);
    });
  });
});

describe("dates and counts", () => {
  it("gaps run from 3 to 50 days and use the whole stretch", () => {
    const days = unevenDays(0, 2000, 3, 50, randomFrom(4, 4));
    const gaps = days.slice(1).map((day, i) => day - (days[i] as number));
    expect([Math.min(...gaps), Math.max(...gaps)]).toEqual([3, 50]);
  });

  it("swing counts run from 3 to 8", () => {
    expect([...new Set(swingCounts(500, 3, 8, randomFrom(4, 4)))].sort()).toEqual([3, 4, 5, 6, 7, 8]);
  });
});

describe("level paths", () => {
  it("a step holds its new level from its session on; a relapse goes back", () => {
    expect([3, 4].map((i) => levelAt(step(140, 70, 4), i))).toEqual([140, 70]);
    expect([4, 5, 9, 10].map((i) => levelAt(relapse(10, 1, 5, 9, 10), i))).toEqual([10, 1, 1, 9]);
  });

  it("a ramp is half-way in the middle, an exponential 1 - 1/e of the way after one scale", () => {
    expect(levelAt({ kind: "ramp", from: 0, to: 8, start: 2, end: 6 }, 4)).toBe(4);
    const curve = levelAt({ kind: "exponential", from: 0, to: 10, start: 3, scale: 7 }, 10);
    expect(curve).toBeCloseTo(10 * (1 - Math.exp(-1)), 12);
  });
});
