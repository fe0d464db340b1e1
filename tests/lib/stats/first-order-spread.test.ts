import { describe, expect, it } from "vitest";
import { firstOrderSpread } from "@/lib/stats/first-order-spread";
import { normal, randomFrom } from "@/seed/random";

describe("reference: closed forms", () => {
  it("3x - 2y with sds .5 and .25 and covariance .1: sqrt(9 x .25 + 4 x .0625 - 12 x .1) = 1.140", () => {
    const { value, gradient, sd } = firstOrderSpread(
      ([x, y]) => 3 * (x as number) - 2 * (y as number),
      [4, 1],
      [
        [0.25, 0.1],
        [0.1, 0.0625],
      ],
    );
    expect(value).toBe(10);
    expect(gradient[0]).toBeCloseTo(3, 9);
    expect(gradient[1]).toBeCloseTo(-2, 9);
    expect(sd).toBeCloseTo(Math.sqrt(9 * 0.25 + 4 * 0.0625 - 12 * 0.1), 9);
  });

  it("log of a mean: sd over mean (Casella and Berger 2002, 5.5.23, formula from memory): .2 / 5 = .04", () => {
    expect(firstOrderSpread(([x]) => Math.log(x as number), [5], [[0.04]]).sd).toBeCloseTo(0.04, 7);
  });
});

describe("too little and bad input", () => {
  it("an argument without doubt adds nothing; none at all gives 0", () => {
    expect(
      firstOrderSpread(
        ([x, y]) => (x as number) * (y as number),
        [2, 3],
        [
          [0, 0],
          [0, 1],
        ],
      ).sd,
    ).toBeCloseTo(2, 9);
    expect(firstOrderSpread(() => 7, [], [])).toEqual({ value: 7, gradient: [], sd: 0 });
  });

  it("a covariance of another size, a variance below 0 and what is no number are refused", () => {
    expect(() => firstOrderSpread(() => 0, [1], [])).toThrow(/1 rows/);
    expect(() => firstOrderSpread(() => 0, [1], [[1, 2]])).toThrow(/1 values/);
    expect(() => firstOrderSpread(() => 0, [1], [[-1]])).toThrow(/-1/);
    expect(() => firstOrderSpread(() => 0, [Number.NaN], [[1]])).toThrow(/means/);
  });
});

describe("invariance", () => {
  it("an argument in another unit leaves the sd: x in tenths", () => {
    const one = firstOrderSpread(([x]) => Math.sin(x as number), [0.4], [[0.01]]).sd;
    const tenths = firstOrderSpread(([x]) => Math.sin((x as number) / 10), [4], [[1]]).sd;
    expect(tenths).toBeCloseTo(one, 12);
  });
});

describe("calibration: 20,000 draws, seed 20261130", () => {
  it("x y with sds a twentieth of the means: the draws' sd within 3 Monte-Carlo sds (2 % at 20,000 draws)", () => {
    const random = randomFrom(20261130, 0);
    const values = Array.from({ length: 20_000 }, () => (10 + 0.5 * normal(random)) * (4 + 0.2 * normal(random)));
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const sd = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
    const { sd: first } = firstOrderSpread(
      ([x, y]) => (x as number) * (y as number),
      [10, 4],
      [
        [0.25, 0],
        [0, 0.04],
      ],
    );
    expect(Math.abs(sd / first - 1)).toBeLessThan(3 / Math.sqrt(2 * 20_000) + 0.005);
  });
});
