import { describe, expect, it } from "vitest";
import { emptyCellEvidence, fillCellEvidence } from "@/lib/stats/cell-evidence";
import { cholesky } from "@/lib/stats/cholesky";
import { covariance } from "@/lib/stats/covariance";
import { lookData } from "@/lib/stats/look-data";
import type { NuisanceCell } from "@/lib/stats/nuisance-grid";
import { oddColumn, rampColumn, stepColumn } from "@/lib/stats/shapes";
import { whiten } from "@/lib/stats/whiten";
import { madeNoise, madeSeries } from "./made-series";

const look = lookData(madeSeries([[1], [3], [2], [7], [6], [8]]), madeNoise([{ daySd: 1.2, correlation: 0.3 }], 2));
const nuisance = look.cells[0] as NuisanceCell;

/** Log of the density of the values, the level integrated out under a flat belief, the size under N(0, V). */
function logMarginal(column: Float64Array | null, variance: number): number {
  const n = look.count;
  const matrix = covariance(look, nuisance);
  if (column !== null)
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++)
        matrix[i * n + j] = (matrix[i * n + j] as number) + variance * (column[i] as number) * (column[j] as number);
  const factor = cholesky(matrix, n);
  const y = whiten(factor, look.values, n);
  const one = whiten(factor, new Float64Array(n).fill(1), n);
  let log = 0;
  let s11 = 0;
  let s1y = 0;
  let syy = 0;
  for (let i = 0; i < n; i++) {
    log -= Math.log(factor[i * n + i] as number);
    s11 += (one[i] as number) ** 2;
    s1y += (one[i] as number) * (y[i] as number);
    syy += (y[i] as number) ** 2;
  }
  return log - 0.5 * Math.log(s11) - 0.5 * (syy - (s1y * s1y) / s11);
}

describe("reference: sizes integrated out by adding V x x' to the covariance", () => {
  const cell = emptyCellEvidence(6);
  fillCellEvidence(look, nuisance, cell);
  const unit = 1.2 ** 2 + look.meanVariance;
  const mean = (logs: number[]): number => logs.reduce((sum, log) => sum + Math.exp(log), 0) / logs.length;
  it("flat", () => {
    expect(cell.logFlat).toBeCloseTo(logMarginal(null, 0), 10);
  });
  it("change: half the mean over steps 2 to 4, half the mean over ramps 0 to 3, V = 4 unit variances", () => {
    const steps = [2, 3, 4].map((k) => logMarginal(stepColumn(6, k), 4 * unit));
    const ramps = [0, 1, 2, 3].map((k) => logMarginal(rampColumn(6, k), 4 * unit));
    expect(cell.logChange).toBeCloseTo(Math.log(0.5 * mean(steps) + 0.5 * mean(ramps)), 10);
  });
  it("no change: 0.7 flat, 0.3 the mean over one odd group, V = 16 unit variances", () => {
    const odd = [0, 1, 2, 3, 4, 5].map((k) => logMarginal(oddColumn(6, k), 16 * unit));
    expect(cell.logNoChange).toBeCloseTo(Math.log(0.7 * Math.exp(cell.logFlat) + 0.3 * mean(odd)), 10);
  });
});

describe("invariance", () => {
  it("a group 100,000 sds away overflows nothing", () => {
    const far = lookData(madeSeries([[1], [3], [2], [3e5], [6], [8]]), madeNoise([{ daySd: 0.1 }], 2));
    const cell = emptyCellEvidence(6);
    fillCellEvidence(far, far.cells[0] as NuisanceCell, cell);
    for (const log of [cell.logFlat, cell.logChange, cell.logNoChange, cell.up])
      expect(Number.isFinite(log)).toBe(true);
  });
});
