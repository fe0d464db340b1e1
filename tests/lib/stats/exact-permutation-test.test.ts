import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exactPermutationTest, MOST_SPLITS } from "@/lib/stats/exact-permutation-test";
import { expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

function pOf(first: readonly number[], second: readonly number[]): number {
  const got = exactPermutationTest(first, second);
  if (got.kind !== "ok") throw new Error(JSON.stringify(got));
  return got.value.p;
}

describe("reference", () => {
  it("Student (1908), ten sleepers by two drugs: 15048 of 184756 splits (enumeration)", () => {
    const [one] = readReference<{ x: number[]; y: number[] }, { p_two_sample: number }>(
      "06b_two_group_tests",
      "sleep_permutation",
    );
    if (!one) throw new Error("missing");
    const got = exactPermutationTest(one.input.x, one.input.y);
    expect(got.kind === "ok" && got.value.arrangements).toBe(184_756);
    expectNear(pOf(one.input.x, one.input.y), one.expected.p_two_sample, one.tolerance);
  });
  it("by hand: 1 2 3 against 4 5 6 is the farthest split either way, 2 of 20; 1 against 2 3 ties with 3 against 1 2, 2 of 3", () => {
    expect(pOf([1, 2, 3], [4, 5, 6])).toBe(0.1);
    expectNear(pOf([1], [2, 3]), 2 / 3, { rel: 1e-15 });
  });
  it("3 against 30, the 3 largest of 33 are 1 of 5456 splits, none on the other side as far", () => {
    const rest = Array.from({ length: 30 }, (_, i) => i / 10);
    expectNear(pOf([50, 60, 70], rest), 1 / 5456, { rel: 1e-12 });
  });
});

describe("too little and bad input", () => {
  it("an empty list is 0 of 1", () => {
    expect(exactPermutationTest([], [1, 2])).toEqual({ kind: "too-few", have: 0, need: 1 });
  });
  it("13 against 13 has 10400600 splits, above 2704156", () => {
    const list = Array.from({ length: 13 }, (_, i) => i);
    expect(exactPermutationTest(list, list)).toEqual({ kind: "too-many", have: 10_400_600, need: MOST_SPLITS });
  });
  it("NaN and infinity are refused", () => {
    expect(() => exactPermutationTest([Number.NaN], [1])).toThrow("first[0]");
    expect(() => exactPermutationTest([1], [Number.POSITIVE_INFINITY])).toThrow("second[0]");
  });
  it("values all equal give p 1", () => {
    expect(pOf([0.1, 0.1], [0.1, 0.1, 0.1])).toBe(1);
  });
});

describe("invariance", () => {
  const list = fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 1, maxLength: 5 });
  /** Every split by bit pattern, in whole numbers: n1 n2 times the difference of means. */
  function bruteForce(a: readonly number[], b: readonly number[]): number {
    const all = [...a, ...b];
    const total = all.reduce((sum, value) => sum + value, 0);
    const far = (sum: number) => Math.abs(all.length * sum - a.length * total);
    const seen = far(a.reduce((sum, value) => sum + value, 0));
    let splits = 0;
    let asFar = 0;
    for (let bits = 0; bits < 2 ** all.length; bits++) {
      const chosen = all.filter((_, i) => bits & (1 << i));
      if (chosen.length !== a.length) continue;
      splits++;
      if (far(chosen.reduce((sum, value) => sum + value, 0)) >= seen) asFar++;
    }
    return asFar / splits;
  }
  it("equals brute force; tenths, a shift, exchange and order change nothing, ties included", () => {
    fc.assert(
      fc.property(list, list, (a, b) => {
        const p = pOf(a, b);
        expectNear(p, bruteForce(a, b), { abs: 1e-15 });
        const move = (values: number[]) => values.map((value) => 0.1 * value + 37.3).reverse();
        expect(pOf(move(b), move(a))).toBe(p);
      }),
    );
  });
});

describe("calibration", () => {
  it("3000 draws of 3 against 5: p is at or below 2/56 in 2/56 of them, within 4 x 0.0034", () => {
    const normal = seededNormals(1937);
    const runs = 3000;
    let alarms = 0;
    for (let run = 0; run < runs; run++)
      if (pOf(Array.from({ length: 3 }, normal), Array.from({ length: 5 }, normal)) <= 2 / 56 + 1e-12) alarms++;
    expectNear(alarms / runs, 2 / 56, { abs: monteCarloBand(2 / 56, runs) });
  });
});
