import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { betaCdf, betaQuantile } from "@/lib/stats/beta-distribution";
import { shareGrid } from "@/lib/stats/share-grid";
import { shareSummary } from "@/lib/stats/share-summary";
import { expectNear } from "@/tests/reference/read-reference";
import { monteCarloBand, seededChances } from "./seeded-normals";

/** Belief after `successes` of `trials` with every share equally believed before: Beta(k + 1, n - k + 1). */
function weightsOf(successes: number, trials: number): Float64Array {
  const { masses, logs } = shareGrid([{ successes, trials }], { correlations: [0], weights: [1] });
  const list = logs[0]?.[0] as Float64Array;
  return masses.map((mass, j) => mass * Math.exp(list[j] as number));
}

describe("reference: quantiles of the beta distribution, checked elsewhere against 40-digit arithmetic", () => {
  it.each([
    [3, 8],
    [0, 6],
    [19, 20],
    [60, 200],
    [500, 1000],
  ])("%d of %d: both equal-tail intervals and the mean (k + 1) / (n + 2), within 1e-4", (k, n) => {
    const { mean, equalTail80, equalTail95 } = shareSummary(weightsOf(k, n));
    expectNear(mean, (k + 1) / (n + 2), { abs: 1e-5 }, "mean");
    const end = (p: number) => betaQuantile(p, k + 1, n - k + 1);
    expectNear(equalTail80.low, end(0.1), { abs: 1e-4 }, "low, 80");
    expectNear(equalTail80.high, end(0.9), { abs: 1e-4 }, "high, 80");
    expectNear(equalTail95.low, end(0.025), { abs: 1e-4 }, "low, 95");
    expectNear(equalTail95.high, end(0.975), { abs: 1e-4 }, "high, 95");
  });

  it("all failures, 0 of 6: the shortest 95 of 100 goes from 0 to 1 - 0.05^(1/7) = 0.3482", () => {
    const { low, high } = shareSummary(weightsOf(0, 6)).shortest95;
    expect(low).toBe(0);
    expectNear(high, 1 - 0.05 ** (1 / 7), { abs: 1e-6 });
  });

  it("all successes, 6 of 6: it goes from there to 1", () => {
    const { low, high } = shareSummary(weightsOf(6, 6)).shortest95;
    expectNear(low, 0.05 ** (1 / 7), { abs: 1e-6 });
    expect(high).toBe(1);
  });
});

describe("too little and bad input", () => {
  it("no weight, a weight below 0 and NaN are refused", () => {
    expect(() => shareSummary([0, 0, 0])).toThrow("a belief needs weight: 0");
    expect(() => shareSummary([])).toThrow("a belief needs weight: 0");
    expect(() => shareSummary([1, -1, 0])).toThrow("weights[1] must be 0 or more, got -1");
    expect(() => shareSummary([1, Number.NaN])).toThrow("weights[1] must be 0 or more, got NaN");
  });

  it("belief in one cell keeps every end near it", () => {
    const weights = new Array<number>(101).fill(0);
    weights[50] = 1;
    const { mean, shortest95 } = shareSummary(weights);
    expectNear(mean, 0.5, { abs: 1e-12 });
    expect(shortest95.high - shortest95.low).toBeLessThan(0.04);
  });
});

describe("invariance", () => {
  const counts = fc.integer({ min: 1, max: 60 }).chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));

  it("a scale of the weights is nothing; mirrored counts mirror every end; the shortest is no longer than the equal-tail", () => {
    fc.assert(
      fc.property(counts, ([k, n]) => {
        const one = shareSummary(weightsOf(k, n));
        expect(shareSummary(weightsOf(k, n).map((weight) => 4 * weight))).toEqual(one);
        const other = shareSummary(weightsOf(n - k, n));
        expectNear(other.equalTail95.low, 1 - one.equalTail95.high, { abs: 1e-10 });
        expectNear(other.shortest80.low, 1 - one.shortest80.high, { abs: 2e-4 });
        const width = (interval: { low: number; high: number }) => interval.high - interval.low;
        expect(width(one.shortest95)).toBeLessThanOrEqual(width(one.equalTail95) + 1e-9);
      }),
      { numRuns: 50 },
    );
  });

  it("every interval holds what it says, by the beta cdf", () => {
    fc.assert(
      fc.property(counts, ([k, n]) => {
        const { equalTail80, equalTail95, shortest80, shortest95 } = shareSummary(weightsOf(k, n));
        const held = ({ low, high }: { low: number; high: number }) =>
          betaCdf(high, k + 1, n - k + 1) - betaCdf(low, k + 1, n - k + 1);
        for (const interval of [equalTail80, shortest80]) expectNear(held(interval), 0.8, { abs: 1e-4 });
        for (const interval of [equalTail95, shortest95]) expectNear(held(interval), 0.95, { abs: 1e-4 });
      }),
      { numRuns: 50 },
    );
  });
});

describe("calibration", () => {
  it("1000 shares drawn evenly and 15 trials each: the shortest 80 of 100 holds the share in .8 within .0506", () => {
    const chance = seededChances(79);
    const known = Array.from({ length: 16 }, (_, k) => shareSummary(weightsOf(k, 15)).shortest80);
    const runs = 1000;
    let held = 0;
    for (let run = 0; run < runs; run++) {
      const share = chance();
      const successes = Array.from({ length: 15 }, chance).filter((one) => one < share).length;
      const { low, high } = known[successes] as { low: number; high: number };
      if (low <= share && share <= high) held++;
    }
    expectNear(held / runs, 0.8, { abs: monteCarloBand(0.8, runs) }, "held");
  });
});
