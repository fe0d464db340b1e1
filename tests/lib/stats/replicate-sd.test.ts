import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { replicateSd } from "@/lib/stats/replicate-sd";
import { normal, seeded } from "./made-series";

const worked = [
  [4, 6, 5],
  [7, 5, 6],
  [10, 12, 11],
  [12, 10, 13],
  [11, 13, 12],
];

describe("reference: worked by hand", () => {
  it("15 pairs with median 1, s0 = 1 / 0.9539, squares 4 x 2 + 4.67 over 10, times 1.03: sd 1.1425", () => {
    const spread = replicateSd(worked, 1, null);
    expect(spread.sd).toBeCloseTo(1.1425, 4);
    expect(spread.degreesOfFreedom).toBe(10);
    expect(spread.own).toBe(spread.sd);
  });
  it("a pool sd of 3 counts as four more degrees of freedom: (10 x 1.1425^2 + 4 x 9) / 14", () => {
    expect(replicateSd(worked, 1, 3).sd).toBeCloseTo(Math.sqrt((10 * 1.14252 ** 2 + 36) / 14), 4);
  });
});

describe("too little and bad input", () => {
  it("below four degrees of freedom: the pool's sd, and without that the reading error", () => {
    const few = [[1, 2], [3, 9], [4, 4], [8]];
    expect(replicateSd(few, 0.7, 2)).toEqual({ sd: 2, degreesOfFreedom: 3, own: null });
    expect(replicateSd(few, 0.7, null)).toEqual({ sd: 0.7, degreesOfFreedom: 3, own: null });
    expect(replicateSd([], 0.7, null)).toEqual({ sd: 0.7, degreesOfFreedom: 0, own: null });
  });
  it("replicates that never differ have spread 0", () => {
    expect(
      replicateSd(
        [
          [2, 2, 2],
          [5, 5, 5],
        ],
        1,
        null,
      ).sd,
    ).toBe(0);
  });
});

describe("invariance", () => {
  const groups = fc.array(fc.array(fc.integer({ min: -40, max: 40 }), { minLength: 1, maxLength: 5 }), {
    minLength: 3,
    maxLength: 6,
  });
  it("moving each group by its own amount and reversing replicates changes nothing; doubling doubles", () => {
    fc.assert(
      fc.property(groups, (list) => {
        const before = replicateSd(list, 1, null);
        const moved = replicateSd(
          list.map((group, i) => group.map((value) => 2 * value + 7 * i).reverse()),
          2,
          null,
        );
        expect(moved.sd).toBeCloseTo(2 * before.sd, 8);
      }),
    );
  });
});

describe("calibration: 400 series of 8 groups of 5, sd 3", () => {
  const random = seeded(11);
  const meanVariance = (draw: () => number): number => {
    let sum = 0;
    for (let r = 0; r < 400; r++)
      sum +=
        (replicateSd(
          Array.from({ length: 8 }, () => Array.from({ length: 5 }, draw)),
          1,
          null,
        ).own as number) ** 2;
    return sum / 400 / 9;
  };
  it("Gaussian: mean variance within 3.5 % of the truth (standard error 1.3 %, published ratio 1.005)", () => {
    const ratio = meanVariance(() => 3 * normal(random));
    expect(Math.abs(ratio - 1.005)).toBeLessThan(0.04);
  });
  it("2 % of values 30 away: the variance grows by less than half, where the plain one doubles or more", () => {
    const ratio = meanVariance(() => 3 * normal(random) + (random() < 0.02 ? 30 : 0));
    expect(ratio).toBeLessThan(1.5);
  });
});
