import { describe, expect, it } from "vitest";
import { lookData } from "@/lib/stats/look-data";
import { madeNoise, madeSeries } from "./made-series";

const series = madeSeries(
  [
    [4, 6, 5],
    [7, 5, 6],
    [10, 12, 11],
    [12, 10, 13],
    [11, 13, 12],
  ],
  0.5,
);
const noise = madeNoise([{ daySd: 1.5 }]);
const altered = (change: (i: number) => object) => ({
  ...series,
  groups: series.groups.map((group, i) => ({ ...group, ...change(i) })),
});

describe("reference: worked by hand", () => {
  const look = lookData(series, noise);
  it("values less the first: 0 1 6 6.7 7; variance 0.25 + 1.1425^2 / 3 = 0.6851 each", () => {
    expect(look.origin).toBeCloseTo(5, 12);
    expect([...look.values].map((value) => Math.round(value * 10) / 10)).toEqual([0, 1, 6, 6.7, 7]);
    for (const variance of look.variances) expect(variance).toBeCloseTo(0.25 + 1.14252 ** 2 / 3, 4);
  });
  it("an unused group leaves the others their positions", () => {
    const holed = lookData(
      altered((i) => ({ used: i !== 1 })),
      noise,
    );
    expect(holed.positions).toEqual([0, 2, 3, 4]);
    expect(holed.count).toBe(4);
  });
  it("a starting belief is counted from the first value: 8 - 5 = 3, 2^2 = 4", () => {
    expect(lookData({ ...series, start: { mean: 8, sd: 2 } }, noise).start).toEqual({ mean: 3, variance: 4 });
  });
});

describe("ties", () => {
  it("none without repeated labels; a matrix of the used groups with them", () => {
    expect(lookData(series, noise).ties).toBeNull();
    const tied = altered((i) => ({ sharedErrorLabel: i < 2 ? "a" : null, used: i < 4 }));
    expect(lookData(tied, noise).ties).toHaveLength(16);
  });
});

describe("too little and bad input", () => {
  it("no group: empty, finite, without cells", () => {
    const look = lookData({ ...series, groups: [] }, noise);
    expect([look.count, look.meanVariance, look.cells.length]).toEqual([0, 0, 0]);
  });
  it("a bad value throws", () => {
    expect(() =>
      lookData(
        altered(() => ({ values: [Number.NaN] })),
        noise,
      ),
    ).toThrow("NaN");
  });
});
