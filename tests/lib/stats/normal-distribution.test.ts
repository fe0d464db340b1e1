import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normalCdf, normalQuantile, normalUpperTail } from "@/lib/stats/normal-distribution";
import { expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";

interface Input {
  readonly x: number[];
}

describe("reference: mpmath with 40 digits", () => {
  it.each(readReference<Input, number[]>("02a_distributions", "norm_cdf"))("$id from -38 to 5, 10 digits", (one) => {
    expectAllNear(one.input.x.map(normalCdf), one.expected, one.tolerance, one.id);
  });

  it.each(readReference<Input, number[]>("02a_distributions", "norm_q"))("$id from 1e-300 up, 12 digits", (one) => {
    expectAllNear(one.input.x.map(normalQuantile), one.expected, one.tolerance, one.id);
  });

  it("the upper tail at 20 is 2.7536241186062337e-89, where 1 - cdf says 0", () => {
    expectNear(normalUpperTail(20), 2.7536241186062337e-89, { rel: 1e-12 });
    expect(1 - normalCdf(20)).toBe(0);
  });
});

describe("too little and bad input", () => {
  it("infinity has everything below it, minus infinity nothing; NaN is refused", () => {
    expect([normalCdf(Number.POSITIVE_INFINITY), normalCdf(Number.NEGATIVE_INFINITY)]).toEqual([1, 0]);
    expect(() => normalCdf(Number.NaN)).toThrow("got NaN");
  });

  it.each([0, 1, -1, Number.NaN])("no quantile at p = %d", (p) => {
    expect(() => normalQuantile(p)).toThrow(`p must lie between 0 and 1, got ${p}`);
  });
});

describe("invariance", () => {
  it("cdf and upper tail are mirror images", () => {
    fc.assert(
      fc.property(fc.double({ min: -38, max: 38, noNaN: true }), (x) => {
        expect(normalUpperTail(x)).toBe(normalCdf(-x));
      }),
    );
  });

  it("the quantile undoes the cdf, from 1e-290 to a half", () => {
    fc.assert(
      fc.property(fc.double({ min: -36, max: 0, noNaN: true }), (x) => {
        expectNear(normalQuantile(normalCdf(x)), x, { rel: 1e-12, abs: 1e-14 });
      }),
    );
  });
});
