import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MOST_PATTERNS, signFlipTest } from "@/lib/stats/sign-flip-test";
import { expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

function pOf(differences: readonly number[]): number {
  const got = signFlipTest(differences);
  if (got.kind !== "ok") throw new Error(JSON.stringify(got));
  return got.value.p;
}

describe("reference", () => {
  it("Student (1908), ten sleepers, drug by drug: 4 of 1024 patterns (enumeration); one difference is 0", () => {
    const [one] = readReference<{ x: number[]; y: number[] }, { p_sign_flip: number }>(
      "06b_two_group_tests",
      "sleep_permutation",
    );
    if (!one) throw new Error("missing");
    const differences = one.input.x.map((value, i) => value - (one.input.y[i] as number));
    expectNear(pOf(differences), one.expected.p_sign_flip, one.tolerance);
  });
  it("by hand: 1, 2, 3 all up is 2 of 8; 1, 2, -3 has sum 0, all 8", () => {
    expect([pOf([1, 2, 3]), pOf([1, 2, -3])]).toEqual([0.25, 1]);
  });
});

describe("too little and bad input", () => {
  it("no pair is 0 of 1; 22 pairs have 4194304 patterns, above 2097152; NaN is refused", () => {
    expect(signFlipTest([])).toEqual({ kind: "too-few", have: 0, need: 1 });
    const many = Array.from({ length: 22 }, (_, i) => i);
    expect(signFlipTest(many)).toEqual({ kind: "too-many", have: 2 ** 22, need: MOST_PATTERNS });
    expect(() => signFlipTest([1, Number.NaN])).toThrow("differences[1]");
  });
});

describe("invariance", () => {
  it("equals brute force by bit pattern; tenths, order and turning all signs change nothing, ties included", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 1, maxLength: 9 }), (list) => {
        const seen = Math.abs(list.reduce((sum, value) => sum + value, 0));
        let asFar = 0;
        for (let bits = 0; bits < 2 ** list.length; bits++) {
          const sum = list.reduce((total, value, i) => total + (bits & (1 << i) ? value : -value), 0);
          if (Math.abs(sum) >= seen) asFar++;
        }
        expect(pOf(list)).toBe(asFar / 2 ** list.length);
        expect(pOf([...list].reverse().map((value) => -0.1 * value))).toBe(pOf(list));
      }),
    );
  });
});

describe("calibration", () => {
  it("3000 draws of 7: p is at or below 6/128 in 6/128 of them, within 4 x 0.0039", () => {
    const normal = seededNormals(1935);
    const runs = 3000;
    let alarms = 0;
    for (let run = 0; run < runs; run++) if (pOf(Array.from({ length: 7 }, normal)) <= 6 / 128) alarms++;
    expectNear(alarms / runs, 6 / 128, { abs: monteCarloBand(6 / 128, runs) });
  });
});
