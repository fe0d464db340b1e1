import { describe, expect, it } from "vitest";
import { emptyCellEvidence, fillCellEvidence } from "@/lib/stats/cell-evidence";
import { type LookData, lookData } from "@/lib/stats/look-data";
import type { NuisanceCell } from "@/lib/stats/nuisance-grid";
import { madeNoise, madeSeries } from "./made-series";

const worked = madeSeries([
  [4, 6, 5],
  [7, 5, 6],
  [10, 12, 11],
  [12, 10, 13],
  [11, 13, 12],
]);

describe("reference", () => {
  it("worked by hand with replicate sd 1.1425, day sd 1.5: steps 205.357 12.768, ramps 59.141 46.800 7.801", () => {
    const look = lookData(worked, madeNoise([{ daySd: 1.5 }]));
    const variance = 0.25 + 1.1425 ** 2 / 3;
    // Centres at reach 1.5 x 1.1425 = 1.71375: only 12 10 13 is touched; (25 - 1.71375) / 2 < 11.667, so the mean.
    const exact: LookData = { ...look, variances: new Float64Array(5).fill(variance), meanVariance: variance };
    const cell = emptyCellEvidence(5);
    fillCellEvidence(exact, exact.cells[0] as NuisanceCell, cell);
    const factors = (shape: typeof cell.step, starts: number[]): number[] =>
      starts.map((k) => (shape.factor[k] as number) * Math.exp(shape.peak));
    const [two, three] = factors(cell.step, [2, 3]);
    const [r0, r1, r2] = factors(cell.ramp, [0, 1, 2]);
    expect(two).toBeCloseTo(205.357, 3);
    expect(three).toBeCloseTo(12.768, 3);
    expect(r0).toBeCloseTo(59.141, 3);
    expect(r1).toBeCloseTo(46.8, 3);
    expect(r2).toBeCloseTo(7.801, 3);
  });
  it("no correlation, known sd, equal variances: the textbook normal-normal Bayes factor of two means", () => {
    // Means of k and n - k values of variance v differ by d ~ N(0, V + s) against N(0, s), s = v/k + v/(n - k).
    const look = lookData(worked, madeNoise([{ daySd: 1.5 }], 1.2));
    const cell = emptyCellEvidence(5);
    fillCellEvidence(look, look.cells[0] as NuisanceCell, cell);
    const v = 1.5 ** 2 + look.meanVariance;
    for (const k of [2, 3]) {
      const mean = (from: number, to: number): number =>
        look.values.slice(from, to).reduce((sum, value) => sum + value, 0) / (to - from);
      const d = mean(k, 5) - mean(0, k);
      const s = v / k + v / (5 - k);
      const V = 4 * v;
      const textbook = Math.sqrt(s / (s + V)) * Math.exp(0.5 * d * d * (1 / s - 1 / (s + V)));
      expect(((cell.step.factor[k] as number) * Math.exp(cell.step.peak)) / textbook).toBeCloseTo(1, 10);
    }
  });
});

describe("too little and bad input", () => {
  it("values all alike: every score is 0, every factor below 1, up counts half", () => {
    const look = lookData(madeSeries([[3], [3], [3], [3]]), madeNoise([{ daySd: 1 }]));
    const cell = emptyCellEvidence(4);
    fillCellEvidence(look, look.cells[0] as NuisanceCell, cell);
    expect(cell.step.peak).toBe(0);
    expect(cell.step.sum).toBeLessThan(1);
    expect(cell.step.up).toBe(cell.step.sum / 2);
  });
});
