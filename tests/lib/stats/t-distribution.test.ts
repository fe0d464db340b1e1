import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normalCdf } from "@/lib/stats/normal-distribution";
import { tCdf, tQuantile, tUpperTail } from "@/lib/stats/t-distribution";
import { expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";

interface Input {
  readonly df: number;
  readonly x: number[];
}

describe("reference: mpmath with 40 digits", () => {
  it.each(readReference<Input, number[]>("02a_distributions", "t_cdf"))("$id from -50 to 30, 12 digits", (one) => {
    expectAllNear(
      one.input.x.map((x) => tCdf(x, one.input.df)),
      one.expected,
      one.tolerance,
      one.id,
    );
  });

  it.each(readReference<Input, number[]>("02a_distributions", "t_sf"))("$id upper tail to 200, 12 digits", (one) => {
    expectAllNear(
      one.input.x.map((x) => tUpperTail(x, one.input.df)),
      one.expected,
      one.tolerance,
      one.id,
    );
  });

  it.each(readReference<Input, number[]>("02a_distributions", "t_q"))("$id from 1e-10 to 0.9995, 10 digits", (one) => {
    expectAllNear(
      one.input.x.map((p) => tQuantile(p, one.input.df)),
      one.expected,
      one.tolerance,
      one.id,
    );
  });
});

describe("too little and bad input", () => {
  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])("%d degrees of freedom are refused", (degrees) => {
    expect(() => tCdf(1, degrees)).toThrow(`degrees must be above 0 and finite, got ${degrees}`);
    expect(() => tQuantile(0.5, degrees)).toThrow(`got ${degrees}`);
  });

  it("p of 0 and 1 and an x of NaN are refused", () => {
    for (const p of [0, 1, Number.NaN]) expect(() => tQuantile(p, 5)).toThrow(`got ${p}`);
    expect(() => tCdf(Number.NaN, 5)).toThrow("got NaN");
  });
});

describe("invariance", () => {
  const degrees = fc.integer({ min: 1, max: 200 });

  it("cdf and upper tail are mirror images and sum to 1", () => {
    fc.assert(
      fc.property(fc.double({ min: -50, max: 50, noNaN: true }), degrees, (x, df) => {
        expect(tUpperTail(x, df)).toBe(tCdf(-x, df));
        expectNear(tUpperTail(x, df) + tCdf(x, df), 1, { rel: 1e-14 });
      }),
    );
  });

  it("the quantile undoes the cdf", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 0.999, noNaN: true }), degrees, (p, df) => {
        expectNear(tCdf(tQuantile(p, df), df), p, { rel: 1e-9 });
      }),
    );
  });

  it("a million degrees of freedom come within 1e-6 of the normal", () => {
    for (const x of [-3, -1, 0, 2]) expectNear(tCdf(x, 1e6), normalCdf(x), { abs: 1e-6 });
  });
});
