import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { limitsOfAgreement } from "@/lib/stats/limits-of-agreement";
import { normalUpperTail } from "@/lib/stats/normal-distribution";
import { answerOf, expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

interface Expected {
  readonly bias: number;
  readonly sd_diff: number;
  readonly se_bias: number;
  readonly bias_ci95: number[];
  readonly "loa_1.96": number[];
  readonly loa_2: number[];
  readonly se_loa_sqrt3: number;
  readonly lower_2sd_ci95: number[];
  readonly upper_2sd_ci95: number[];
}

const TWO_SD = 1 - 2 * normalUpperTail(2);

describe("reference: Bland & Altman (1986), peak flow by two meters", () => {
  const [one] = readReference<{ a: number[]; b: number[] }, Expected>("01c_reliability", "bland_altman_1986");
  if (!one) throw new Error("missing");
  const { a, b } = one.input;
  // Print has limits -79.7 and 75.5, made from the rounded -2.1 and 38.8; unrounded they are -79.65 and 75.41.
  it("bias -2.12, sd 38.77, limits at 2 sd -79.65 and 75.41, all with their intervals", () => {
    const got = answerOf(limitsOfAgreement(a, b, TWO_SD, 0.95));
    const { expected, tolerance } = one;
    expectNear(got.sd, expected.sd_diff, tolerance, "sd");
    expectNear(got.bias.standardError, expected.se_bias, tolerance, "error of bias");
    expectAllNear([got.bias.value, got.bias.low, got.bias.high], [expected.bias, ...expected.bias_ci95], tolerance);
    expectAllNear([got.lower.value, got.upper.value], expected.loa_2, tolerance, "limits");
    expectNear(got.lower.standardError, expected.se_loa_sqrt3, tolerance, "error of limit");
    expectAllNear([got.lower.low, got.lower.high], expected.lower_2sd_ci95, tolerance, "lower");
    expectAllNear([got.upper.low, got.upper.high], expected.upper_2sd_ci95, tolerance, "upper");
  });
  it("for 95 of 100: -78.10 and 73.86", () => {
    const got = answerOf(limitsOfAgreement(a, b, 0.95, 0.95));
    expectAllNear([got.lower.value, got.upper.value], one.expected["loa_1.96"], one.tolerance);
  });
  it("second = 2 x first - 10 + (0, 1, -1, 0): slope of the difference on the mean by the normal equations", () => {
    const x = [10, 20, 30, 40];
    const y = [10, 31, 49, 70];
    const means = [10, 25.5, 39.5, 55];
    const gaps = [0, -11, -19, -30];
    const cross = means.reduce((sum, mean, i) => sum + (mean - 32.5) * ((gaps[i] as number) + 15), 0);
    const square = means.reduce((sum, mean) => sum + (mean - 32.5) ** 2, 0);
    const slope = answerOf(answerOf(limitsOfAgreement(x, y, 0.95, 0.95)).proportionalBias);
    expectNear(slope.value, cross / square, { rel: 1e-12 });
  });
});

describe("too little and bad input", () => {
  it("one pair is 1 of 2; equal differences are 1 of 2 different ones; two pairs have no slope, 2 of 3", () => {
    expect(limitsOfAgreement([1], [2], 0.95, 0.95)).toEqual({ kind: "too-few", have: 1, need: 2 });
    expect(limitsOfAgreement([1, 2, 3], [2, 3, 4], 0.95, 0.95)).toEqual({ kind: "too-few", have: 1, need: 2 });
    const two = answerOf(limitsOfAgreement([1, 2], [2, 5], 0.95, 0.95));
    expect(two.proportionalBias).toEqual({ kind: "too-few", have: 2, need: 3 });
  });
  it("unequal lengths, NaN and shares of 95 are refused", () => {
    expect(() => limitsOfAgreement([1, 2], [1], 0.95, 0.95)).toThrow("second must have 2 values, got 1");
    expect(() => limitsOfAgreement([1, Number.NaN], [1, 2], 0.95, 0.95)).toThrow("first[1]");
    expect(() => limitsOfAgreement([1, 2], [1, 3], 95, 0.95)).toThrow("got 95");
    expect(() => limitsOfAgreement([1, 2], [1, 3], 0.95, 95)).toThrow("got 95");
  });
});

describe("invariance", () => {
  const pairs = fc.array(fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 })), {
    minLength: 3,
    maxLength: 12,
  });
  it("exchanging the two turns the limits' signs; a common shift changes nothing; order is nothing", () => {
    fc.assert(
      fc.property(pairs, (list) => {
        const first = list.map(([a]) => a);
        const second = list.map(([, b]) => b);
        const before = limitsOfAgreement(first, second, 0.95, 0.9);
        const after = limitsOfAgreement(
          second.map((value) => value + 40).reverse(),
          first.map((value) => value + 40).reverse(),
          0.95,
          0.9,
        );
        expect(after.kind).toBe(before.kind);
        if (before.kind !== "ok") return;
        expectNear(answerOf(after).lower.low, -before.value.upper.high, { abs: 1e-9 });
        expectNear(answerOf(after).bias.value, -before.value.bias.value, { abs: 1e-9 });
      }),
    );
  });
});

describe("calibration", () => {
  it("2000 draws of 60 pairs: bias, upper limit and slope 0 held 95 of 100, limit within 0.015 more (large-sample error)", () => {
    const normal = seededNormals(307);
    const runs = 2000;
    const held = { bias: 0, upper: 0, slope: 0 };
    for (let run = 0; run < runs; run++) {
      const level = Array.from({ length: 60 }, () => 10 * normal());
      const first = level.map((value) => value + 1 + normal());
      const second = level.map((value) => value + normal());
      const got = answerOf(limitsOfAgreement(first, second, 0.95, 0.95));
      const top = 1 + 1.959964 * Math.SQRT2;
      const slope = answerOf(got.proportionalBias);
      if (got.bias.low < 1 && got.bias.high > 1) held.bias++;
      if (got.upper.low < top && got.upper.high > top) held.upper++;
      if (slope.low < 0 && slope.high > 0) held.slope++;
    }
    const band = monteCarloBand(0.95, runs);
    expectNear(held.bias / runs, 0.95, { abs: band }, "bias");
    expectNear(held.upper / runs, 0.95, { abs: band + 0.015 }, "upper");
    expectNear(held.slope / runs, 0.95, { abs: band }, "slope");
  });
});
