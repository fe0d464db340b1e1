import { describe, expect, it } from "vitest";
import { cameAndWent, hasRoom } from "@/lib/stats/came-and-went";
import { lookData } from "@/lib/stats/look-data";
import { madeNoise, madeSeries } from "./made-series";

const lookOf = (values: readonly number[], daySd = 1) =>
  lookData(
    madeSeries(
      values.map((value) => [value]),
      0.5,
    ),
    madeNoise([{ daySd }], 2),
  );

/** Log density of n values with a variance v each and a level of unknown size, flat, or a normal size on one stretch. */
function logOf(values: readonly number[], v: number, stretch: readonly number[], sizeVariance: number): number {
  const n = values.length;
  // Regression on the ones and the stretch, the size shrunk to 0: both integrals by hand.
  const m = stretch.length;
  const sum = values.reduce((a, b) => a + b, 0);
  const part = stretch.reduce((a, i) => a + (values[i] as number), 0);
  const information = (m - (m * m) / n) / v;
  const score = (part - (m * sum) / n) / v;
  return 0.5 * ((score * score) / (information + 1 / sizeVariance) - Math.log(1 + sizeVariance * information));
}

describe("reference: equal variances, by the regression on ones and one stretch worked out by hand", () => {
  const values = [0, 1, -1, 5, 6, 4, 5, 0, 1, -1];
  const look = lookOf(values);
  const v = 1 + (look.variances[0] as number);
  it("the factor is the mean over every stretch with three groups before, in and after it", () => {
    const stretches: number[][] = [];
    for (let from = 3; from <= 4; from++)
      for (let to = from + 3; to <= 7; to++) stretches.push(Array.from({ length: to - from }, (_, i) => from + i));
    expect(stretches.length).toBe(3);
    const logs = stretches.map((stretch) => logOf([...look.values], v, stretch, 9));
    const mean = Math.log(logs.reduce((sum, log) => sum + Math.exp(log), 0) / logs.length);
    const found = cameAndWent(look, look.cells[0] as (typeof look.cells)[0], 9);
    expect(found.logFactor).toBeCloseTo(mean, 10);
  });
  it("the level is that of the groups outside a stretch far away: their mean 0, with the variance of six", () => {
    const far = lookOf([0, 1, -1, 5e3, 6e3, 4e3, 5e3, 0, 1, -1]);
    // A size of any kind takes the stretch out: what is left is the mean of the six groups around it.
    const found = cameAndWent(far, far.cells[0] as (typeof far.cells)[0], 1e12);
    expect(found.levelMean).toBeCloseTo(0, 4);
    expect(found.levelVariance).toBeCloseTo(v / 6, 4);
  });
});

describe("too little and invariance", () => {
  it("nine groups are the fewest", () => {
    expect([hasRoom(8), hasRoom(9)]).toEqual([false, true]);
  });
  it("a shift of all values moves nothing, as values are less their first", () => {
    const one = lookOf([0, 1, -1, 5, 6, 4, 5, 0, 1, -1]);
    const two = lookOf([70, 71, 69, 75, 76, 74, 75, 70, 71, 69]);
    const [a, b] = [one, two].map((look) => cameAndWent(look, look.cells[0] as (typeof look.cells)[0], 9));
    expect(a?.logFactor).toBeCloseTo(b?.logFactor as number, 10);
  });
  it("a stretch a thousand sds away stays a number", () => {
    const look = lookOf([0, 1, -1, 5e3, 6e3, 4e3, 5e3, 0, 1, -1]);
    const found = cameAndWent(look, look.cells[0] as (typeof look.cells)[0], 9);
    expect(Number.isFinite(found.logFactor + found.levelMean + found.levelVariance)).toBe(true);
  });
});
