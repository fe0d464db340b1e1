import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exactPermutationTest } from "@/lib/stats/exact-permutation-test";
import { permutedBlocks } from "@/lib/stats/permuted-blocks";
import { type RandomBlock, type RandomisedLook, rerandomisedLooks } from "@/lib/stats/rerandomised-looks";
import { expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededChances, seededNormals } from "./seeded-normals";

const plan = { fractions: [1], level: 0.05, orders: 200_000 };
const never = () => {
  throw new Error("no chance was to be asked");
};
function looksOf(...asked: Parameters<typeof rerandomisedLooks>): RandomisedLook[] {
  const got = rerandomisedLooks(...asked);
  if (got.kind !== "ok") throw new Error(JSON.stringify(got));
  return got.value;
}
const lastOf = (...asked: Parameters<typeof rerandomisedLooks>): RandomisedLook =>
  looksOf(...asked).at(-1) as RandomisedLook;
const place = (arm: 0 | 1, value: number, look = 0) => ({ arm, measured: { value, look } });
const oneBlock = (first: readonly number[], second: readonly number[]): RandomBlock[] => [
  { stratum: 0, places: [...first.map((value) => place(0, value)), ...second.map((value) => place(1, value))] },
];

describe("reference", () => {
  it("one block of 20: the exact test of two groups, Student's ten sleepers by two drugs, 15048 of 184756 (enumeration)", () => {
    const [one] = readReference<{ x: number[]; y: number[] }, { p_two_sample: number }>(
      "06b_two_group_tests",
      "sleep_permutation",
    );
    if (!one) throw new Error("missing");
    const look = lastOf(oneBlock(one.input.x, one.input.y), plan, never);
    expect([look.orders, look.counted]).toEqual([184_756, "all"]);
    expectNear(look.p, one.expected.p_two_sample, one.tolerance);
    expectNear(look.estimate, 1.58, { abs: 1e-12 });
  });
  it("by hand: five pairs, each 1 apart the same way: 2 of 32 orders, .0625, prove nothing; six: 2 of 64 do", () => {
    const pairs = (count: number): RandomBlock[] =>
      Array.from({ length: count }, (_, i) => ({ stratum: 0, places: [place(0, 10 * i), place(1, 10 * i + 1)] }));
    const [five, six] = [5, 6].map((count) => lastOf(pairs(count), plan, never));
    expect([five?.p, five?.proved, five?.bound]).toEqual([0.0625, "no", Number.POSITIVE_INFINITY]);
    expect([six?.p, six?.proved]).toEqual([0.03125, "yes"]);
    expectNear(six?.estimate ?? 0, 1, { rel: 1e-12 });
  });
});

describe("too little and bad input", () => {
  it("one value of an arm is 1 of 2; nothing measured 0 of 2", () => {
    expect(rerandomisedLooks(oneBlock([1], [2, 3]), plan, never)).toEqual({ kind: "too-few", have: 1, need: 2 });
    expect(rerandomisedLooks([], plan, never)).toEqual({ kind: "too-few", have: 0, need: 2 });
  });
  it("NaN, shares that fall and a look that isn't planned are refused", () => {
    expect(() => rerandomisedLooks(oneBlock([Number.NaN, 1], [2, 3]), plan, never)).toThrow("values[0]");
    expect(() => rerandomisedLooks([], { ...plan, fractions: [0.5, 0.5] }, never)).toThrow("got 0.5");
    expect(() => rerandomisedLooks([{ stratum: 0, places: [place(0, 1, 3)] }], plan, never)).toThrow("look: 3");
  });
  it("at a look with nothing proved possible the interval has no end", () => {
    const [look] = looksOf(oneBlock([1, 2], [3, 4]), plan, never);
    expect([look?.low, look?.high, look?.proved]).toEqual([Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, "no"]);
  });
  it("values all alike: no difference, p 1", () => {
    const look = lastOf(oneBlock([2, 2, 2, 2], [2, 2, 2, 2]), plan, never);
    expect([look.estimate, look.p, look.proved]).toEqual([0, 1, "no"]);
  });
});

describe("invariance", () => {
  const list = fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 2, maxLength: 5 });
  it("one block, one look: p of the exact permutation test", () => {
    fc.assert(
      fc.property(list, list, (first, second) => {
        const exact = exactPermutationTest(first, second);
        if (exact.kind !== "ok") throw new Error("too many");
        expectNear(lastOf(oneBlock(first, second), plan, never).p, exact.value.p, { rel: 1e-12 });
      }),
      { numRuns: 60 },
    );
  });
  it("shifted, mirrored and with the arms turned round: the same p, the interval goes along", () => {
    const values = [3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5, 8];
    const blocks = (of: (value: number, i: number) => { value: number; arm: 0 | 1 }): RandomBlock[] =>
      [0, 1, 2].map((stratum) => ({
        stratum,
        places: values.slice(4 * stratum, 4 * stratum + 4).map((value, i) => {
          const so = of(value, i);
          return place(so.arm, so.value);
        }),
      }));
    const arm = (i: number) => (i % 2) as 0 | 1;
    const plain = lastOf(
      blocks((value, i) => ({ value: value + 8 * arm(i), arm: arm(i) })),
      plan,
      never,
    );
    const moved = lastOf(
      blocks((value, i) => ({ value: value + 8 * arm(i) + 100, arm: arm(i) })),
      plan,
      never,
    );
    const turned = lastOf(
      blocks((value, i) => ({ value: value + 8 * arm(i), arm: arm(i + 1) })),
      plan,
      never,
    );
    expect([moved.p, turned.p]).toEqual([plain.p, plain.p]);
    expect([moved.proved, plain.proved]).toEqual(["yes", "yes"]);
    expectNear(moved.low, plain.low, { abs: 1e-9 });
    expectNear(turned.high, -plain.low, { abs: 1e-9 });
    expect(plain.low).toBeGreaterThan(0);
  });
  it("a later look changes nothing that an earlier one said", () => {
    const rng = seededChances(4);
    const made: RandomBlock[] = permutedBlocks(rng, { sizes: [4], count: 48 }).map((arms, i) => ({
      stratum: i % 2,
      places: arms.map((arm) => place(arm, 10 * rng() + arm, i < 6 ? 0 : 1)),
    }));
    const early = looksOf(made.slice(0, 6), { ...plan, fractions: [0.5], orders: 999 }, seededChances(5));
    const both = looksOf(made, { ...plan, fractions: [0.5, 1], orders: 999 }, seededChances(5));
    expect(both[0]).toEqual(early[0]);
  });
});

describe("calibration", () => {
  const made = (seed: number, shift: number, tails: "normal" | "heavy"): RandomBlock[] => {
    const [chance, normal] = [seededChances(seed), seededNormals(seed + 1e6)];
    let at = 0;
    return permutedBlocks(chance, { sizes: [2, 4], count: 48 }).map((arms, i) => ({
      stratum: i % 3,
      places: arms.map((arm) => {
        const noise = tails === "normal" ? normal() : normal() / Math.max(0.05, Math.abs(normal()));
        const look = Math.min(2, Math.floor(at++ / 16));
        return place(arm, noise + 2 * (i % 3) + shift * arm, look);
      }),
    }));
  };
  const three = { fractions: [1 / 3, 2 / 3, 1], level: 0.05, orders: 400 };
  it("1000 comparisons without difference, normal or heavy-tailed, three looks: at most 5 of 100 ever prove something, within 4 standard errors (.028)", () => {
    for (const tails of ["normal", "heavy"] as const) {
      const runs = 500;
      let proved = 0;
      for (let run = 0; run < runs; run++)
        if (lastOf(made(run + 1, 0, tails), three, seededChances(run + 7)).proved === "yes") proved++;
      expect(proved / runs).toBeLessThan(0.05 + monteCarloBand(0.05, runs));
      expect(proved).toBeGreaterThan(3);
    }
  });
  it("300 comparisons with a shift of .9 sd: the last interval holds it in 95 of 100 and more but 4 standard errors, and 8 of 10 are found", () => {
    const runs = 300;
    const looks = Array.from({ length: runs }, (_, run) =>
      lastOf(made(run + 5000, 0.9, "normal"), three, seededChances(run)),
    );
    const held = looks.filter(({ low, high }) => low <= 0.9 && 0.9 <= high).length;
    const found = looks.filter(({ proved }) => proved === "yes").length;
    expect(held / runs).toBeGreaterThan(0.95 - monteCarloBand(0.95, runs));
    expect(found / runs).toBeGreaterThan(0.8 - monteCarloBand(0.8, runs));
  });
});
