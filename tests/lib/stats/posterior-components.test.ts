import { describe, expect, it } from "vitest";
import { lookData } from "@/lib/stats/look-data";
import { posteriorComponents } from "@/lib/stats/posterior-components";
import { madeNoise, madeSeries } from "./made-series";

describe("reference: layout and one conjugate update by hand", () => {
  const look = lookData(madeSeries([[1], [3], [2], [7], [6]]), madeNoise([{ daySd: 1 }, { daySd: 2 }], 2));
  const found = posteriorComponents(look);
  it("two cells x (flat + 5 odd + 4 steps + 3 ramps) = 26 components", () => {
    expect([found.stride, found.unchanged, found.weights.length]).toEqual([13, 6, 26]);
    for (const weight of found.weights) expect(weight).toBeGreaterThan(0);
  });
  it("equal variances v: flat level is the mean of 0 2 1 6 5 = 2.8, with variance v / 5", () => {
    const v = 1 + look.meanVariance;
    expect(found.levelMeans[0]).toBeCloseTo(2.8, 10);
    expect(found.levelVariances[0]).toBeCloseTo(v / 5, 10);
  });
  it("step at 3: difference of means 4.5, variance s = v (1/3 + 1/2), shrunk by 4v / (4v + s)", () => {
    const v = 1 + look.meanVariance;
    const s = v * (1 / 3 + 1 / 2);
    const shrunk = 4.5 * ((4 * v) / (4 * v + s));
    const at = 6 + 2;
    expect(found.sizeMeans[at]).toBeCloseTo(shrunk, 10);
    expect(found.sizeVariances[at]).toBeCloseTo(1 / (1 / s + 1 / (4 * v)), 10);
    // The level at the last group is 2.8 plus the part of the change above the mean: 3/5 of it.
    expect(found.levelMeans[at]).toBeCloseTo(2.8 + 0.6 * shrunk, 10);
    expect(found.beforeMeans[at]).toBeCloseTo(2.8 - 0.4 * shrunk, 10);
  });
  it("evidence is gathered on the way: one entry a cell", () => {
    expect([found.gathered.change.length, found.gathered.noChange.length, found.gathered.up.length]).toEqual([2, 2, 2]);
  });
});

describe("invariance", () => {
  it("a group 100,000 sds away leaves weights finite and not all 0", () => {
    for (const values of [
      [[3e5], [3], [2], [7], [6]],
      [[3], [3], [2], [7], [3e5]],
    ]) {
      const far = posteriorComponents(lookData(madeSeries(values), madeNoise([{ daySd: 0.1 }], 2)));
      const total = far.weights.reduce((sum, weight) => sum + weight, 0);
      expect(Number.isFinite(total) && total > 0).toBe(true);
      // Questions about a change, given that there was one, need some weight on changes.
      const changes = far.weights.slice(far.unchanged).reduce((sum, weight) => sum + weight, 0);
      expect(changes).toBeGreaterThan(0);
    }
  });
});
