import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { typicalError } from "@/lib/stats/typical-error";
import { answerOf, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

/** Differences of `count` pairs with a typical error of 1 and no bias: +-1 in turn, scaled. */
function balanced(count: number): number[] {
  const raw = Array.from({ length: count }, (_, i) => (i % 2 === 0 ? 1 : -1));
  const mean = raw.reduce((sum, value) => sum + value, 0) / count;
  const squares = raw.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const scale = Math.sqrt((2 * (count - 1)) / squares);
  return raw.map((value) => scale * (value - mean));
}

describe("reference", () => {
  it.each([
    [10, 0.69, 1.83],
    [20, 0.76, 1.46],
    [30, 0.8, 1.34],
    [50, 0.84, 1.25],
  ])("interval factors of %i pairs are %f and %f (chi-square with one degree less)", (count, low, high) => {
    const got = answerOf(typicalError([balanced(count)], 0.95));
    expectNear(got.typical, 1, { rel: 1e-12 });
    expectNear(got.low, low, { abs: 0.005 });
    expectNear(got.high, high, { abs: 0.005 });
  });
  it("Bland & Altman (1986), large meter read twice on 17 people: whole error 15.3, bias taken out beside it", () => {
    const [one] = readReference<{ first: number[]; second: number[] }, { sem: number }>(
      "01c_reliability",
      "pefr_repeat",
    );
    if (!one) throw new Error("missing");
    const differences = one.input.second.map((value, i) => value - (one.input.first[i] as number));
    const got = answerOf(typicalError([differences], 0.95));
    expectNear(got.whole, one.expected.sem, one.tolerance, "whole error");
    expectNear(got.whole, 15.3, { abs: 0.05 });
    const { difference } = answerOf(got.bias);
    // Whole and typical differ by the bias alone: 2 n whole² = 2 (n - 1) typical² + n bias².
    expectNear(34 * got.whole ** 2, 32 * got.typical ** 2 + 17 * difference ** 2, { rel: 1e-12 });
  });
  it("two lists with biases of their own: sum of squares 2 + 8 over 2 x (1 + 1) is 2.5, its root 1.581", () => {
    const got = answerOf(
      typicalError(
        [
          [4, 6],
          [-3, 1],
        ],
        0.95,
      ),
    );
    expectNear(got.typical, Math.sqrt(2.5), { rel: 1e-12 });
    expect([got.degrees, got.pairs]).toEqual([2, 4]);
    expectNear(got.whole, Math.sqrt(62 / 8), { rel: 1e-12 });
  });
});

describe("too little and bad input", () => {
  it("no list with two pairs; no two different differences in a list", () => {
    expect(typicalError([], 0.95)).toEqual({ kind: "too-few", have: 0, need: 2 });
    expect(typicalError([[1], [2]], 0.95)).toEqual({ kind: "too-few", have: 1, need: 2 });
    expect(typicalError([[2, 2], [1]], 0.95)).toEqual({ kind: "too-few", have: 0, need: 1 });
  });
  it("NaN and a confidence of 95 are refused", () => {
    expect(() => typicalError([[1, Number.NaN]], 0.95)).toThrow("lists[0][1]");
    expect(() => typicalError([[1, 2]], 95)).toThrow("got 95");
  });
});

describe("invariance", () => {
  const lists = fc.array(fc.array(fc.integer({ min: -30, max: 30 }), { minLength: 1, maxLength: 6 }), {
    minLength: 1,
    maxLength: 4,
  });
  it("a list's own bias, the order and an empty list change the typical error by nothing; doubling doubles it", () => {
    fc.assert(
      fc.property(lists, (given) => {
        const before = typicalError(given, 0.9);
        const moved = given.map((list, i) => [...list].reverse().map((value) => 2 * value + 50 * i));
        const after = typicalError([[], ...moved].reverse(), 0.9);
        expect(after.kind).toBe(before.kind);
        if (before.kind !== "ok") return;
        expectNear(answerOf(after).typical, 2 * before.value.typical, { rel: 1e-10 });
        expectNear(answerOf(after).high, 2 * before.value.high, { rel: 1e-10 });
      }),
    );
  });
  it("exchanging first and second turns the bias and leaves the errors", () => {
    const one = answerOf(typicalError([[1, 3, -2, 5]], 0.95));
    const other = answerOf(typicalError([[-1, -3, 2, -5]], 0.95));
    expectNear(answerOf(other.bias).difference, -answerOf(one.bias).difference, { rel: 1e-12 });
    expect([other.typical, other.whole]).toEqual([one.typical, one.whole]);
  });
});

describe("calibration", () => {
  it("1500 draws of 12 pairs, error 2, bias 1: 95 of 100 intervals hold 2 and the bias’s holds 1, within 4 x 0.0056", () => {
    const normal = seededNormals(2000);
    const runs = 1500;
    let [held, bias] = [0, 0];
    for (let run = 0; run < runs; run++) {
      const differences = Array.from({ length: 12 }, () => 1 + 2 * normal() - 2 * normal());
      const got = answerOf(typicalError([differences], 0.95));
      if (got.low < 2 && got.high > 2) held++;
      const { low, high } = answerOf(got.bias);
      if (low < 1 && high > 1) bias++;
    }
    expectNear(held / runs, 0.95, { abs: monteCarloBand(0.95, runs) });
    expectNear(bias / runs, 0.95, { abs: monteCarloBand(0.95, runs) });
  });
});
