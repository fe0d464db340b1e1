import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fCdf, fQuantile, fUpperTail } from "@/lib/stats/f-distribution";
import { tUpperTail } from "@/lib/stats/t-distribution";
import { expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";

interface Input {
  readonly df1: number;
  readonly df2: number;
  readonly x: number[];
}

describe("reference: mpmath with 40 digits", () => {
  it.each(readReference<Input, number[]>("02a_distributions", "f_cdf"))("$id, 12 digits", ({ input, ...one }) => {
    expectAllNear(
      input.x.map((x) => fCdf(x, input.df1, input.df2)),
      one.expected,
      one.tolerance,
      one.id,
    );
  });

  it.each(readReference<Input, number[]>("02a_distributions", "f_sf"))(
    "$id upper tail to 900, 12 digits",
    ({ input, ...one }) => {
      expectAllNear(
        input.x.map((x) => fUpperTail(x, input.df1, input.df2)),
        one.expected,
        one.tolerance,
        one.id,
      );
    },
  );

  it.each(readReference<Input, number[]>("02a_distributions", "f_q"))("$id, 9 digits", ({ input, ...one }) => {
    expectAllNear(
      input.x.map((p) => fQuantile(p, input.df1, input.df2)),
      one.expected,
      one.tolerance,
      one.id,
    );
  });
});

describe("too little and bad input", () => {
  it("nothing lies below 0, nothing above infinity", () => {
    expect([fCdf(0, 3, 16), fUpperTail(0, 3, 16)]).toEqual([0, 1]);
    expect([fCdf(Number.POSITIVE_INFINITY, 3, 16), fUpperTail(Number.POSITIVE_INFINITY, 3, 16)]).toEqual([1, 0]);
  });

  it("a negative x, NaN, no degrees of freedom and p of 0 or 1 are refused", () => {
    expect(() => fCdf(-1, 3, 16)).toThrow("x must be 0 or more, got -1");
    expect(() => fUpperTail(Number.NaN, 3, 16)).toThrow("got NaN");
    expect(() => fUpperTail(1, 0, 16)).toThrow("got 0");
    for (const p of [0, 1]) expect(() => fQuantile(p, 3, 16)).toThrow(`got ${p}`);
  });
});

describe("invariance", () => {
  const degrees = fc.integer({ min: 1, max: 60 });

  it("F with 1 and n degrees is t with n squared: its tail at t squared is twice t's", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 100, noNaN: true }), degrees, (t, n) => {
        expectNear(fUpperTail(t * t, 1, n), 2 * tUpperTail(t, n), { rel: 1e-10 });
      }),
    );
  });

  it("turning the ratio over turns the tails over", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 100, noNaN: true }), degrees, degrees, (x, a, b) => {
        expectNear(fCdf(x, a, b), fUpperTail(1 / x, b, a), { rel: 1e-10 });
        expectNear(fCdf(x, a, b) + fUpperTail(x, a, b), 1, { rel: 1e-12 });
      }),
    );
  });
});
