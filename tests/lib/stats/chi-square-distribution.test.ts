import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chiSquareCdf, chiSquareQuantile, chiSquareUpperTail } from "@/lib/stats/chi-square-distribution";
import { normalUpperTail } from "@/lib/stats/normal-distribution";
import { expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";

interface Input {
  readonly df: number;
  readonly x: number[];
}

describe("reference: mpmath with 40 digits", () => {
  it.each(readReference<Input, number[]>("02a_distributions", "chi2_cdf"))("$id down to 1e-107, 12 digits", (one) => {
    expectAllNear(
      one.input.x.map((x) => chiSquareCdf(x, one.input.df)),
      one.expected,
      one.tolerance,
      one.id,
    );
  });

  it.each(readReference<Input, number[]>("02a_distributions", "chi2_sf"))(
    "$id upper tail to 1e-45, 12 digits",
    (one) => {
      expectAllNear(
        one.input.x.map((x) => chiSquareUpperTail(x, one.input.df)),
        one.expected,
        one.tolerance,
        one.id,
      );
    },
  );

  it.each(readReference<Input, number[]>("02a_distributions", "chi2_q"))("$id from 1e-6 to 0.999, 10 digits", (one) => {
    expectAllNear(
      one.input.x.map((p) => chiSquareQuantile(p, one.input.df)),
      one.expected,
      one.tolerance,
      one.id,
    );
  });
});

describe("too little and bad input", () => {
  it("nothing lies below 0, everything above it; infinity the other way round", () => {
    expect([chiSquareCdf(0, 3), chiSquareUpperTail(0, 3)]).toEqual([0, 1]);
    expect([chiSquareCdf(Number.POSITIVE_INFINITY, 3), chiSquareUpperTail(Number.POSITIVE_INFINITY, 3)]).toEqual([
      1, 0,
    ]);
  });

  it("a negative x, NaN, no degrees of freedom and p of 0 or 1 are refused", () => {
    expect(() => chiSquareCdf(-1, 3)).toThrow("x must be 0 or more, got -1");
    expect(() => chiSquareUpperTail(Number.NaN, 3)).toThrow("got NaN");
    expect(() => chiSquareUpperTail(1, 0)).toThrow("degrees must be above 0 and finite, got 0");
    for (const p of [0, 1]) expect(() => chiSquareQuantile(p, 3)).toThrow(`got ${p}`);
  });
});

describe("invariance", () => {
  it("2 degrees of freedom: the upper tail is e^(-x/2), by hand", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1400, noNaN: true }), (x) => {
        expectNear(chiSquareUpperTail(x, 2), Math.exp(-x / 2), { rel: 1e-12 });
      }),
    );
  });

  it("1 degree of freedom: the upper tail is twice the normal tail at the root of x", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1400, noNaN: true }), (x) => {
        expectNear(chiSquareUpperTail(x, 1), 2 * normalUpperTail(Math.sqrt(x)), { rel: 1e-12 });
      }),
    );
  });

  it("cdf and upper tail sum to 1 on both sides of the join at degrees + 2", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.double({ min: 0.2, max: 3, noNaN: true }), (df, share) => {
        expectNear(chiSquareCdf(df * share, df) + chiSquareUpperTail(df * share, df), 1, { rel: 1e-12 });
      }),
    );
  });
});
