import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { armDifference } from "@/lib/stats/arm-difference";
import { expectNear } from "@/tests/reference/read-reference";
import { seededChances, seededNormals } from "./seeded-normals";

describe("reference: by hand, and least squares with a constant for each stratum", () => {
  it("one stratum: the difference of means, 5 - 2 = 3", () => {
    expect(armDifference([1, 3, 5], [0, 0, 1], [0, 0, 0])).toBe(3);
  });
  it("two strata: 3 with weight 2/3 and 1 with weight 1 give (2 + 1) / (5/3) = 1.8; a third with one arm counts for nothing", () => {
    expectNear(armDifference([1, 3, 5, 0, 2, 1, 3, 99], [0, 0, 1, 0, 0, 1, 1, 1], [0, 0, 0, 1, 1, 1, 1, 2]) ?? 0, 1.8, {
      rel: 1e-14,
    });
  });
});

describe("too little and bad input", () => {
  it("no stratum with both arms says null, an empty list too", () => {
    expect(armDifference([1, 2], [0, 1], [0, 1])).toBeNull();
    expect(armDifference([], [], [])).toBeNull();
  });
  it("lists of unequal length are refused", () => {
    expect(() => armDifference([1, 2], [0], [0, 0])).toThrow("got 2, 1 and 2");
  });
});

describe("invariance", () => {
  it("adding to a stratum changes nothing, turning the arms round turns the sign", () => {
    const rows = fc.array(
      fc.record({ value: fc.integer({ min: -50, max: 50 }), arm: fc.integer({ min: 0, max: 1 }), stratum: fc.nat(3) }),
      { maxLength: 20 },
    );
    fc.assert(
      fc.property(rows, (list) => {
        const values = list.map(({ value }) => value);
        const arms = list.map(({ arm }) => arm);
        const strata = list.map(({ stratum }) => stratum);
        const plain = armDifference(values, arms, strata);
        const moved = list.map(({ value, stratum }) => value + 7 * stratum);
        const turned = armDifference(
          values,
          arms.map((arm) => 1 - arm),
          strata,
        );
        if (plain === null) {
          expect(turned).toBeNull();
          return;
        }
        expectNear(armDifference(moved, arms, strata) ?? Number.NaN, plain, { abs: 1e-9 });
        expectNear(turned ?? Number.NaN, -plain, { abs: 1e-9 });
      }),
    );
  });
});

describe("calibration", () => {
  it("4000 drawn lists with strata 5 apart and a shift of 1: the mean difference is 1 within 4 standard errors", () => {
    const [chance, normal] = [seededChances(7), seededNormals(8)];
    const runs = 4000;
    const seen: number[] = [];
    for (let run = 0; run < runs; run++) {
      const strata = Array.from({ length: 20 }, (_, i) => i % 3);
      const arms = strata.map(() => (chance() < 0.5 ? 1 : 0));
      const values = strata.map((stratum, i) => 5 * stratum + (arms[i] ?? 0) + normal());
      seen.push(armDifference(values, arms, strata) ?? 1);
    }
    const mean = seen.reduce((sum, value) => sum + value, 0) / runs;
    const sd = Math.sqrt(seen.reduce((sum, value) => sum + (value - mean) ** 2, 0) / runs);
    expectNear(mean, 1, { abs: (4 * sd) / Math.sqrt(runs) });
  });
});
