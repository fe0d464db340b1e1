import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evidence } from "@/lib/stats/evidence";
import { lookData } from "@/lib/stats/look-data";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { posterior } from "@/lib/stats/posterior";
import type { Estimate, Series } from "@/lib/stats/series";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { answerOf } from "@/tests/reference/read-reference";
import { gridPoints, type GridPoint as Point, STEP } from "./grid-posterior";
import { madeNoise, madeSeries, SMALL_GRID, scaledNoise, seeded, simulatedSeries, transformed } from "./made-series";

const said = (series: Series, noise: NoiseModel) => answerOf(posterior(series, noise));
const start = startNoiseModel("start");
const band = { low: -3, high: 4 };

describe("reference: brute-force integration over level and size, five groups, two cells", () => {
  const series = madeSeries([[1], [3], [2], [7], [8]], 0.5);
  const noise = madeNoise(
    [
      { daySd: 1, correlation: 0.3, weight: 0.6 },
      { daySd: 2.5, weight: 0.4 },
    ],
    2,
  );
  const look = lookData(series, noise);
  const points = gridPoints(look);
  const one = said(series, noise);
  const share = (part: (point: Point) => number, of: (point: Point) => boolean, weigh = (p: Point) => p.weight) => {
    let held = 0;
    let all = 0;
    for (const point of points) {
      if (!of(point)) continue;
      all += weigh(point);
      held += weigh(point) * part(point);
    }
    return held / all;
  };
  /** The part of a grid point's cell that lies below `edge`. */
  const below = (value: number, edge: number): number => Math.min(1, Math.max(0, (edge - value) / STEP + 0.5));
  const checkEstimate = (
    estimate: Estimate,
    value: (p: Point) => number,
    of: (p: Point) => boolean,
    weigh?: (p: Point) => number,
  ) => {
    const wanted = { low95: 0.025, low80: 0.1, estimate: 0.5, high80: 0.9, high95: 0.975 } as const;
    for (const key of ["low95", "low80", "estimate", "high80", "high95"] as const)
      expect(Math.abs(share((p) => below(value(p), estimate[key]), of, weigh) - wanted[key])).toBeLessThan(0.004);
  };
  it("level: the grid holds 2.5, 10, 50, 90, 97.5 % below its quantiles, to 0.4 points", () => {
    checkEstimate(
      one.level,
      (p) => p.level + look.origin,
      () => true,
    );
  });
  it("size and level before: among claimable shapes, whose two steps hold the belief of all four", () => {
    const claimable = (p: Point): boolean => p.kind === "step" || p.kind === "ramp";
    const weigh = (p: Point): number => p.weight * (p.kind === "step" ? 2 : 1);
    checkEstimate(one.size, (p) => p.size, claimable, weigh);
    checkEstimate(one.levelBefore, (p) => p.before + look.origin, claimable, weigh);
    expect(Math.abs(share((p) => (p.kind === "ramp" ? 1 : 0), claimable, weigh) - one.rampShare)).toBeLessThan(0.002);
  });
  it("probabilityWithin 1, 3 and 6 to half a point", () => {
    for (const limit of [1, 3, 6])
      expect(
        Math.abs(
          share(
            (p) => below(p.size, limit) - below(p.size, -limit),
            () => true,
          ) - one.probabilityWithin(limit),
        ),
      ).toBeLessThan(0.005);
    expect(one.probabilityWithin(0)).toBe(0);
    expect(one.probabilityWithin(1e6)).toBeCloseTo(1, 9);
  });
});

describe("reference: what can be said without integrals", () => {
  const change = (i: number): number => (i < 10 ? 0 : 9);
  const series = simulatedSeries({ groups: 20, level: change }, seeded(41));
  const one = said(series, SMALL_GRID);
  it("it carries the very evidence of `evidence`", () => {
    const alone = answerOf(evidence(series, SMALL_GRID));
    expect([one.groups, one.logBayesFactor, one.directionUp]).toEqual([
      alone.groups,
      alone.logBayesFactor,
      alone.directionUp,
    ]);
  });
  it("a jump of 4 U at group 10: the set is a group or two that hold 10, size, levels and shape follow", () => {
    expect(one.set95).toContain(10);
    expect(one.set95.length).toBeLessThanOrEqual(3);
    expect(one.rampShare).toBeLessThan(0.2);
    expect(one.size.low95).toBeLessThan(9);
    expect(one.size.high95).toBeGreaterThan(9);
    expect(one.level.low95).toBeLessThan(9);
    expect(one.level.high95).toBeGreaterThan(9);
    expect(one.levelBefore.low95).toBeLessThan(0);
    expect(one.levelBefore.high95).toBeGreaterThan(0);
    expect(one.probabilityWithin(3)).toBeLessThan(0.001);
  });
  it("U is made of its parts: daySd^2 + 1 + replicateSd^2 / 5", () => {
    expect(one.unitSd ** 2).toBeCloseTo(one.daySd ** 2 + 1 + one.replicateSd ** 2 / 5, 10);
  });
  it("a slow climb is a ramp that starts early", () => {
    const climb = said(simulatedSeries({ groups: 24, daySd: 0.3, level: (i) => i }, seeded(42)), SMALL_GRID);
    expect(climb.rampShare).toBeGreaterThan(0.9);
    expect(climb.rampStart10).toBeLessThan(5);
  });
  it("indices are positions in the series: an unused group before the jump moves them by one", () => {
    const unused = { ...(series.groups[0] as Series["groups"][0]), used: false };
    const holed = said({ ...series, groups: [unused, ...series.groups] }, SMALL_GRID);
    expect(holed.set95).toEqual(one.set95.map((index) => index + 1));
    expect(holed.rampStart10).toBe(one.rampStart10 + 1);
  });
  it("a firm starting belief pulls the level before to it", () => {
    const pulled = said({ ...series, start: { mean: -4, sd: 0.01 } }, SMALL_GRID);
    expect(Math.abs(pulled.levelBefore.estimate + 4)).toBeLessThan(0.05);
  });
});

describe("too little and bad input", () => {
  it("0 to 3 groups: too few of 4; NaN throws", () => {
    for (let n = 0; n < 4; n++)
      expect(posterior(madeSeries(new Array(n).fill([1])), start)).toEqual({ kind: "too-few", have: n, need: 4 });
    expect(() => posterior(madeSeries([[Number.NaN]]), start)).toThrow("NaN");
  });
  it("constant series of 4 to 6 groups: every number finite", () => {
    for (const replicates of [1, 3])
      for (let n = 4; n <= 6; n++)
        for (const noise of [start, SMALL_GRID]) {
          const flat = madeSeries(
            Array.from({ length: n }, () => new Array<number>(replicates).fill(7)),
            0,
          );
          const one = said(flat, noise);
          const numbers = [one.level, one.levelBefore, one.size, one.share(band)].flatMap(
            (e) => Object.values(e) as number[],
          );
          numbers.push(one.unitSd, one.daySd, one.rampShare, one.rampStart10, one.probabilityWithin(1));
          numbers.push(one.expectedDistance(7, band));
          for (const number of numbers) expect(Number.isFinite(number)).toBe(true);
          expect(one.level.estimate).toBeCloseTo(7, 6);
        }
  });
});

describe("invariance", () => {
  const groups = fc.array(fc.array(fc.integer({ min: -30, max: 30 }), { minLength: 1, maxLength: 4 }), {
    minLength: 4,
    maxLength: 9,
  });
  const near = (a: number, b: number, room: number): void => expect(Math.abs(a - b)).toBeLessThan(room);
  it.each([
    [3, 100],
    [-1, 0],
    [0.01, -2],
  ])("values x %d + %d: estimates, sets and probabilities follow", (factor, shift) => {
    fc.assert(
      fc.property(groups, (values) => {
        const series = madeSeries(values, 0.8);
        const size = Math.abs(factor);
        const before = said(series, SMALL_GRID);
        const after = said(transformed(series, factor, shift), scaledNoise(SMALL_GRID, size));
        // Merging cuts the line into cells that a shift or a mirror moves.
        const room = 0.01 * size * before.unitSd;
        near(after.level.estimate, before.level.estimate * factor + shift, room);
        near(after.size.estimate, before.size.estimate * factor, 3 * room);
        near(after.level.high95 - after.level.low95, size * (before.level.high95 - before.level.low95), 2 * room);
        near(after.probabilityWithin(size), before.probabilityWithin(1), 0.002);
        expect(after.rampStart10).toBe(before.rampStart10);
        near(after.rampShare, before.rampShare, 1e-6);
      }),
      { numRuns: 25 },
    );
  });
});

describe("calibration: 300 series of 16 groups, half of them stepping by 2 U at group 8", () => {
  const random = seeded(77);
  let level95 = 0;
  let level80 = 0;
  let set95 = 0;
  let share95 = 0;
  for (let r = 0; r < 300; r++) {
    const jump = r % 2 === 0 ? 0 : 4.5;
    const one = said(simulatedSeries({ groups: 16, level: (i) => (i < 8 ? 0 : jump) }, random), SMALL_GRID);
    if (one.level.low95 <= jump && jump <= one.level.high95) level95++;
    if (one.level.low80 <= jump && jump <= one.level.high80) level80++;
    if (jump > 0 && one.set95.includes(8)) set95++;
    if (r >= 100) continue;
    // True share: reading error 1 is part of the replicate sd 3; day sd 1.5.
    const sd = Math.sqrt(1.5 ** 2 + 9 - 1);
    const edge = (x: number): number => (x - jump) / sd;
    const { low95, high95 } = one.share({ low: -3, high: 3 });
    const truth = normalShare(edge(-3), edge(3));
    if (low95 <= truth && truth <= high95) share95++;
  }
  it("level 95 %: at least .95 - 4 standard errors (.05); 80 %: .80 -+ .10", () => {
    expect(level95 / 300).toBeGreaterThan(0.9);
    expect(level80 / 300).toBeGreaterThan(0.7);
  });
  it("the 95 % set holds the step in at least .95 - 4 standard errors (.07) of 150", () => {
    expect(set95 / 150).toBeGreaterThan(0.88);
  });
  it("share in band 95 %: at least .95 - 4 standard errors (.09) of 100", () => {
    expect(share95 / 100).toBeGreaterThan(0.86);
  });
});

function normalShare(low: number, high: number): number {
  let sum = 0;
  const steps = 2000;
  for (let i = 0; i < steps; i++) {
    const z = low + ((i + 0.5) * (high - low)) / steps;
    sum += (Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI)) * ((high - low) / steps);
  }
  return sum;
}
