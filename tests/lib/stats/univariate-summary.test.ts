import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { univariateSummary } from "@/lib/stats/univariate-summary";
import { alternating, answerOf, expectNear, readReference } from "@/tests/reference/read-reference";

interface Input {
  readonly y?: number[];
  readonly digits?: string;
  readonly generator?: { first: number; then_alternate: [number, number]; n: number };
}
interface Expected {
  readonly n: number;
  readonly mean: number;
  readonly sd: number;
  readonly lag1_autocorrelation: number;
}

function valuesOf({ y, digits, generator }: Input): number[] {
  if (digits) return [...digits].map(Number);
  if (generator) return alternating(generator.first, generator.then_alternate, generator.n);
  return y ?? [];
}

describe("reference: NIST Statistical Reference Datasets, univariate (certified)", () => {
  it.each(readReference<Input, Expected>("01a_descriptive_nist"))("$id: mean, sd and r1 to 9 digits", (one) => {
    const summary = answerOf(univariateSummary(Object.freeze(valuesOf(one.input))));
    expect(summary.count).toBe(one.expected.n);
    expectNear(summary.mean, one.expected.mean, one.tolerance, "mean");
    expectNear(summary.sd, one.expected.sd, one.tolerance, "sd");
    expectNear(answerOf(summary.lag1Autocorrelation), one.expected.lag1_autocorrelation, one.tolerance, "r1");
  });
});

describe("too little and bad input", () => {
  it("none or one value is too few of 2", () => {
    expect(univariateSummary([])).toEqual({ kind: "too-few", have: 0, need: 2 });
    expect(univariateSummary([7])).toEqual({ kind: "too-few", have: 1, need: 2 });
  });

  it("5, 5, 5 has mean 5 and sd 0, but no autocorrelation: 1 of 2 different values", () => {
    const summary = answerOf(univariateSummary([5, 5, 5]));
    expect([summary.mean, summary.sd]).toEqual([5, 0]);
    expect(summary.lag1Autocorrelation).toEqual({ kind: "too-few", have: 1, need: 2 });
  });

  it("NaN and infinity are refused by place", () => {
    expect(() => univariateSummary([1, Number.NaN])).toThrow("values[1] must be a finite number, got NaN");
    expect(() => univariateSummary([Number.POSITIVE_INFINITY, 1])).toThrow("values[0]");
  });
});

describe("invariance", () => {
  const list = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 40 });

  it("a shift of 1e6 moves the mean by 1e6 and nothing else", () => {
    fc.assert(
      fc.property(list, (values) => {
        const before = answerOf(univariateSummary(values));
        const after = answerOf(univariateSummary(values.map((value) => value + 1e6)));
        expectNear(after.mean, before.mean + 1e6, { rel: 1e-15 }, "mean");
        expectNear(after.sd, before.sd, { rel: 1e-13 }, "sd");
      }),
    );
  });

  it("turning the list round keeps mean, sd and r1; doubling it doubles mean and sd", () => {
    fc.assert(
      fc.property(list, (values) => {
        const before = answerOf(univariateSummary(values));
        const after = answerOf(univariateSummary([...values].reverse().map((value) => 2 * value)));
        expectNear(after.mean, 2 * before.mean, { rel: 1e-13, abs: 1e-13 }, "mean");
        expectNear(after.sd, 2 * before.sd, { rel: 1e-13, abs: 1e-13 }, "sd");
        if (before.lag1Autocorrelation.kind === "ok") {
          expectNear(answerOf(after.lag1Autocorrelation), before.lag1Autocorrelation.value, { abs: 1e-12 }, "r1");
        }
      }),
    );
  });
});
