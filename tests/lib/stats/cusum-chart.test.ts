import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cusumChart } from "@/lib/stats/cusum-chart";
import { answerOf, expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

interface Input {
  readonly y: number[];
  readonly target: number;
  readonly k: number;
  readonly h: number;
}
interface Expected {
  readonly upper: number[];
  readonly lower: number[];
  readonly first_upper_signal: number;
  readonly first_lower_signal: null;
}

const settings = { target: 0, slack: 0.5, limit: 4 };

describe("reference: NIST/SEMATECH e-Handbook, 6.3.2.3", () => {
  it("20 values about 325: sums above and below, first signal at the 14th, run begun at the 13th, none below", () => {
    const [one] = readReference<Input, Expected>("05a_charts_worked", "nist_6323");
    if (!one) throw new Error("no case");
    const { y, target, k, h } = one.input;
    const { upper, lower } = answerOf(cusumChart(y, { target, slack: k, limit: h }));
    expectAllNear(upper.sums, one.expected.upper, one.tolerance, "upper");
    expectAllNear(lower.sums, one.expected.lower, one.tolerance, "lower");
    expect(upper.signal).toEqual({ kind: "signal", index: one.expected.first_upper_signal - 1, start: 12 });
    expect(one.expected.first_lower_signal).toBe(null);
    expect(lower.signal).toEqual({ kind: "none" });
  });
});

describe("too little and bad input", () => {
  it("no value is too few of 1", () => {
    expect(cusumChart([], settings)).toEqual({ kind: "too-few", have: 0, need: 1 });
  });

  it("a slack below 0, a limit of 0 and NaN are refused; a sum of exactly the limit is no signal", () => {
    expect(() => cusumChart([1], { ...settings, slack: -0.1 })).toThrow("slack must be 0 or more, got -0.1");
    expect(() => cusumChart([1], { ...settings, limit: 0 })).toThrow("limit must be above 0 and finite, got 0");
    expect(() => cusumChart([Number.NaN], settings)).toThrow("values[0]");
    expect(answerOf(cusumChart([4.5], settings)).upper.signal).toEqual({ kind: "none" });
    expect(answerOf(cusumChart([4.6], settings)).upper.signal).toEqual({ kind: "signal", index: 0, start: 0 });
  });
});

describe("invariance", () => {
  const lists = fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 1, maxLength: 30 });

  it("each sum is the largest over all starts of the departures less slack since, or 0, brute force", () => {
    fc.assert(
      fc.property(lists, (values) => {
        const { upper } = answerOf(cusumChart(values, settings));
        values.forEach((_, t) => {
          const tails = values.map((_, s) => values.slice(s, t + 1).reduce((sum, value) => sum + value - 0.5, 0));
          expectNear(upper.sums[t] as number, Math.max(0, ...tails.slice(0, t + 1)), { abs: 1e-12 });
        });
      }),
    );
  });

  it("mirroring the values exchanges the sides; a scale of all settings scales the sums", () => {
    fc.assert(
      fc.property(lists, (values) => {
        const chart = answerOf(cusumChart(values, settings));
        const moved = answerOf(
          cusumChart(
            values.map((value) => 7 - 2 * value),
            { target: 7, slack: 1, limit: 8 },
          ),
        );
        expect(moved.upper.sums).toEqual(chart.lower.sums.map((sum) => 2 * sum));
        expect(moved.lower.signal).toEqual(chart.upper.signal);
      }),
    );
  });
});

describe("calibration", () => {
  it("one value of a standard normal: above the limit with chance P(Z > 4.5 - 3) = 0.0668 with limit 1, slack 0.5, within 4 standard errors", () => {
    const normal = seededNormals(31);
    const runs = 20_000;
    let signals = 0;
    for (let run = 0; run < runs; run++)
      if (answerOf(cusumChart([normal()], { target: 0, slack: 0.5, limit: 1 })).upper.signal.kind === "signal")
        signals++;
    expectNear(signals / runs, 0.0668072, { abs: monteCarloBand(0.0668072, runs) }, "signals");
  });
});
