import { describe, expect, it } from "vitest";
import { latelyKnown, localSpread } from "@/lib/stats/local-spread";
import { normal, seeded } from "./made-series";

const made = (sds: readonly number[], replicates: number, seed: number): number[][] => {
  const random = seeded(seed);
  return sds.map((sd) => Array.from({ length: replicates }, () => sd * normal(random)));
};
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

describe("reference", () => {
  it("worked by hand: pairs (-1, 1) then (-3, 3) about an sd of 2: (8 x 4 + 2) / 9 / 4, then (8 x 4 + 2 + 18) / 10 / 4", () => {
    const [one, two] = localSpread(
      [
        [-1, 1],
        [-3, 3],
      ],
      2,
    );
    expect(one).toBeCloseTo(34 / 36, 12);
    expect(two).toBeCloseTo(52 / 40, 12);
  });
  it("a sixth group forgets the first: five groups of pairs (-2, 2) after a wild one leave (8 x 4 + 5 x 8) / 13 / 4", () => {
    const pairs = Array.from({ length: 5 }, () => [-2, 2]);
    expect(localSpread([[-50, 50], ...pairs], 2)[5]).toBeCloseTo(72 / 52, 12);
  });
});

describe("too little and bad input", () => {
  it("what is known of lately: 8 of the whole and m - 1 of each of the last five groups", () => {
    expect([latelyKnown([]), latelyKnown([[1], [2]]), latelyKnown([[1, 2, 3]])]).toEqual([8, 8, 10]);
    expect(latelyKnown(made(new Array(9).fill(1), 4, 1))).toBe(8 + 5 * 3);
  });
  it("single replicates, an sd of 0 and no group at all say nothing: 1, 1 and no entry", () => {
    expect([...localSpread([[4], [9]], 3)]).toEqual([1, 1]);
    expect([
      ...localSpread(
        [
          [4, 5],
          [9, 9],
        ],
        0,
      ),
    ]).toEqual([1, 1]);
    expect(localSpread([], 3)).toHaveLength(0);
  });
});

describe("invariance", () => {
  const groups = made([1, 1, 3, 3, 1, 1, 1], 5, 7);
  const plain = localSpread(groups, 2);
  it("shift, scale and order within a group change nothing; a later group changes no earlier factor", () => {
    const turned = groups.map((group) => [...group].reverse().map((value) => 10 * value + 300));
    localSpread(turned, 20).forEach((factor, i) => {
      expect(factor).toBeCloseTo(plain[i] as number, 10);
    });
    expect([...localSpread(groups.slice(0, 4), 2)]).toEqual([...plain.slice(0, 4)]);
  });
});

describe("calibration", () => {
  it("over 400 series of one sd, five replicates, the mean factor is 1 within .03; where the sd doubles for good it nears 4 sds' worth within five groups", () => {
    const still = Array.from(
      { length: 400 },
      (_, seed) => localSpread(made([2, 2, 2, 2, 2, 2], 5, seed + 1), 2)[5] as number,
    );
    expect(Math.abs(mean(still) - 1)).toBeLessThan(0.03);
    const wider = Array.from(
      { length: 400 },
      (_, seed) => localSpread(made([2, 2, 2, 4, 4, 4, 4, 4], 5, seed + 1), 2)[7] as number,
    );
    // (8 x 4 + 20 x 16) / 28 / 4 = 3.14, less what the clip at four sds takes.
    expect(mean(wider)).toBeGreaterThan(2.8);
    expect(mean(wider)).toBeLessThan(3.2);
  });
});
