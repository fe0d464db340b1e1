import { describe, expect, it } from "vitest";
import { cholesky } from "@/lib/stats/cholesky";
import { covariance } from "@/lib/stats/covariance";
import { lookData } from "@/lib/stats/look-data";
import type { NuisanceCell } from "@/lib/stats/nuisance-grid";
import { type RecentRun, type RecentRuns, recentRuns } from "@/lib/stats/recent-runs";
import type { Series } from "@/lib/stats/series";
import { oddColumn, stepColumn } from "@/lib/stats/shapes";
import { whiten } from "@/lib/stats/whiten";
import {
  madeNoise,
  madeSeries,
  normal,
  SMALL_GRID,
  scaledNoise,
  seeded,
  simulatedSeries,
  transformed,
} from "./made-series";

const SIZE = () => ({ mean: 3, sd: 0.5 });
const NOISE = madeNoise(
  [
    { daySd: 1.2, correlation: 0.3 },
    { daySd: 2, correlation: 0 },
  ],
  2,
);
const SERIES = madeSeries([[5], [6], [4], [5.5], [6.5], [1], [0.5]]);

function found(series: Series, lengths: readonly number[], noise = NOISE): RecentRuns {
  const outcome = recentRuns(series, noise, lengths, SIZE);
  if (outcome.kind !== "ok") throw new Error(outcome.kind);
  return outcome.value;
}

const run = (series: Series, length: number, noise = NOISE): RecentRun =>
  found(series, [length], noise).runs[0] as RecentRun;

describe("reference: sizes summed on a fine grid, the level integrated out", () => {
  const look = lookData(SERIES, NOISE);
  const n = look.count;

  /** Density of the values given a column of a known size, the level integrated out, up to a constant of all. */
  function density(cell: NuisanceCell, column: Float64Array, size: number): number {
    const factor = cholesky(covariance(look, cell), n);
    const y = whiten(
      factor,
      look.values.map((value, i) => value - size * (column[i] as number)),
      n,
    );
    const one = whiten(factor, new Float64Array(n).fill(1), n);
    let [s11, s1y, syy, log] = [0, 0, 0, 0];
    for (let i = 0; i < n; i++) {
      log -= Math.log(factor[i * n + i] as number);
      s11 += (one[i] as number) ** 2;
      s1y += (one[i] as number) * (y[i] as number);
      syy += (y[i] as number) ** 2;
    }
    return Math.exp(log - 0.5 * Math.log(s11) - 0.5 * (syy - (s1y * s1y) / s11));
  }

  const average = (of: (cell: NuisanceCell) => number): number =>
    look.cells.reduce((sum, cell) => sum + cell.weight * of(cell), 0);
  const unitOf = (cell: NuisanceCell): number => Math.sqrt(cell.daySd ** 2 + look.meanVariance);
  const flat = average((cell) => density(cell, new Float64Array(n), 0));

  function summed(
    cell: NuisanceCell,
    column: Float64Array,
    mean: number,
    sd: number,
    sign: number,
    from: number,
  ): number {
    const unit = unitOf(cell);
    let [total, all] = [0, 0];
    for (let z = from; z <= mean + 8 * sd; z += 0.005) {
      const belief = Math.exp(-0.5 * ((z - mean) / sd) ** 2);
      all += belief;
      total += belief * density(cell, column, sign * z * unit);
    }
    return total / all;
  }

  it("a step down of 3 U, sd .5, at each of the last four groups, and one up", () => {
    const { runs } = found(SERIES, [1, 2, 3, 4]);
    for (const { groups, up, down } of runs) {
      const column = stepColumn(n, n - groups);
      const [low, high] = [-1, 1].map((sign) => average((cell) => summed(cell, column, 3, 0.5, sign, 0.0025)));
      expect(down).toBeCloseTo(Math.log((low as number) / flat), 3);
      expect(up).toBeCloseTo(Math.log((high as number) / flat), 3);
    }
  });

  it("one odd group: 0.7 flat and 0.3 the mean over the groups, sd 4 U", () => {
    const odd = average((cell) => {
      const each = Array.from({ length: n }, (_, k) => summed(cell, oddColumn(n, k), 0, 4, 1, -32));
      return each.reduce((sum, part) => sum + part, 0) / n;
    });
    expect(found(SERIES, [1]).oddGroup).toBeCloseTo(Math.log(0.7 + (0.3 * odd) / flat), 3);
  });

  it("without correlation and with one variance the size is the difference of the means: .75 - 5.4 = -4.65", () => {
    const even = madeNoise([{ daySd: 1.2 }], 2);
    expect(run(SERIES, 2, even).size.estimate).toBeCloseTo(-4.65, 10);
  });
});

describe("too little and bad input", () => {
  it("three used groups are too few", () => {
    expect(recentRuns(madeSeries([[1], [2], [3]]), NOISE, [1], SIZE)).toEqual({ kind: "too-few", have: 3, need: 4 });
  });

  it.each([0, 7, 1.5, Number.NaN])("a run of %s of seven groups throws", (length) => {
    expect(() => recentRuns(SERIES, NOISE, [length], SIZE)).toThrow(RangeError);
  });

  it("no length asked for: no run", () => {
    expect(found(SERIES, []).runs).toEqual([]);
  });

  it("a group a thousand sds off overflows nothing", () => {
    const far = run(madeSeries([[1], [3], [2], [1], [-3e3]]), 1);
    for (const each of [far.up, far.down, far.size.estimate]) expect(Number.isFinite(each)).toBe(true);
    expect(far.down).toBeGreaterThan(0);
    expect(far.up).toBeLessThan(0);
  });
});

describe("invariance", () => {
  it("shifted and scaled it says the same, the size in the new unit; mirrored, up and down change places", () => {
    const before = run(SERIES, 2);
    const scaled = run(transformed(SERIES, 10, 500), 2, scaledNoise(NOISE, 10));
    expect(scaled.down).toBeCloseTo(before.down, 8);
    expect(scaled.size.low95).toBeCloseTo(10 * before.size.low95, 5);
    const mirrored = run(transformed(SERIES, -1, 0), 2);
    expect(mirrored.up).toBeCloseTo(before.down, 8);
    expect(mirrored.down).toBeCloseTo(before.up, 8);
  });

  it("a group set aside is as if it were not there", () => {
    const groups = [...SERIES.groups];
    groups.splice(3, 0, { ...(SERIES.groups[0] as Series["groups"][number]), day: 20, values: [99], used: false });
    expect(found({ ...SERIES, groups }, [1, 2])).toEqual(found(SERIES, [1, 2]));
  });
});

describe("calibration", () => {
  it("a Bayes factor of e^3 comes of nothing in at most e^-3 of 600 series: 30 and its Monte-Carlo band, 43", () => {
    const random = seeded(77);
    const false3 = Array.from({ length: 600 }, () => simulatedSeries({ groups: 12 }, random)).filter(
      (series) => run(series, 2, SMALL_GRID).down >= 3,
    ).length;
    expect(false3).toBeLessThanOrEqual(43);
  });

  it("the size lies in its 95 of 100 in at least 130 of 150: 95 % less the Monte-Carlo band and what the grid costs", () => {
    const random = seeded(78);
    const inside = Array.from({ length: 150 }, () => {
      const by = 2 * normal(random);
      const { size } = run(simulatedSeries({ groups: 14, level: (i) => (i >= 11 ? by : 0) }, random), 3, SMALL_GRID);
      return size.low95 <= by && by <= size.high95;
    }).filter(Boolean).length;
    expect(inside).toBeGreaterThanOrEqual(130);
  });
});
