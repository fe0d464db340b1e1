import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { noncentralTCdf, noncentralTQuantile, noncentralTUpperTail } from "@/lib/stats/noncentral-t-distribution";
import { normalCdf } from "@/lib/stats/normal-distribution";
import { tCdf } from "@/lib/stats/t-distribution";
import { expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

interface Input {
  readonly df: number;
  readonly ncp: number;
  readonly x: number[];
}

describe("reference: mpmath with 40 digits", () => {
  // Below about 1e-6 R's own pt(x, df, ncp) keeps only 6 or 7 digits; the values here are two quadratures that agree.
  it.each(readReference<Input, number[]>("02a_distributions", "nct_cdf"))("$id from -3 to 9, 12 digits", (one) => {
    const got = one.input.x.map((x) => noncentralTCdf(x, one.input.df, one.input.ncp));
    expectAllNear(got, one.expected, one.tolerance, one.id);
    expectAllNear(got, one.expected, { rel: 1e-12 }, one.id);
  });

  // mpmath 1.2.1, 30 digits: equal steps of log s, the same with smaller ones.
  it.each([
    [0.5, 1, 20, 1.44844243727369e-71],
    [-3, 10, 30, 1.16023572418563e-209],
    [-20, 5, 2, 8.20309007116764e-9],
    [40, 100, 60, 1.0083125260358e-10],
    [1000, 3, 1000, 0.391625638809997],
    [3, 1e6, 1, 0.977249584598918],
    [2, 300, 4, 0.0230202673159063],
    [2, 0.2, -1, 0.9056687797646207],
  ])("below %d with %d degrees and centre %d: %d, 12 digits", (x, degrees, centre, expected) => {
    expectNear(noncentralTCdf(x, degrees, centre), expected, { rel: 1e-12 });
  });
});

describe("too little and bad input", () => {
  it("nothing lies below minus infinity, everything below infinity; half of -centre at 0", () => {
    expect(noncentralTCdf(Number.NEGATIVE_INFINITY, 5, 1)).toBe(0);
    expect(noncentralTCdf(Number.POSITIVE_INFINITY, 5, 1)).toBe(1);
    expect(noncentralTCdf(0, 5, 1.5)).toBe(normalCdf(-1.5));
    expect(noncentralTCdf(-40, 1000, 40)).toBe(0);
  });

  it("0 degrees, an endless centre, NaN and a p of 1 are refused", () => {
    expect(() => noncentralTCdf(1, 0, 1)).toThrow("degrees must be above 0 and finite, got 0");
    expect(() => noncentralTCdf(1, 5, Number.POSITIVE_INFINITY)).toThrow(
      "centre must be a finite number, got Infinity",
    );
    expect(() => noncentralTCdf(Number.NaN, 5, 1)).toThrow("got NaN");
    expect(() => noncentralTQuantile(1, 5, 1)).toThrow("got 1");
  });
});

describe("invariance", () => {
  const degrees = fc.integer({ min: 1, max: 200 });
  const x = fc.double({ min: -20, max: 20, noNaN: true });
  const centre = fc.double({ min: -10, max: 10, noNaN: true });

  it("a centre of 0 is the central t; nearer to 0 than 0.01 that one has fewer digits", () => {
    fc.assert(
      fc.property(x, degrees, (at, df) => {
        if (Math.abs(at) < 0.01) return;
        expectNear(noncentralTCdf(at, df, 0), tCdf(at, df), { rel: 1e-11, abs: 1e-300 });
      }),
    );
  });

  it("cdf and upper tail sum to 1; a larger centre moves chance upwards", () => {
    fc.assert(
      fc.property(x, degrees, centre, (at, df, c) => {
        expectNear(noncentralTUpperTail(at, df, c) + noncentralTCdf(at, df, c), 1, { abs: 1e-12 });
        expect(noncentralTCdf(at, df, c + 0.1)).toBeLessThanOrEqual(noncentralTCdf(at, df, c) * (1 + 1e-12));
      }),
    );
  });

  it("the quantile's cdf is the chance it was asked for", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }), degrees, centre, (p, df, c) => {
        expectNear(noncentralTCdf(noncentralTQuantile(p, df, c), df, c), p, { rel: 1e-9 });
      }),
      { numRuns: 25 },
    );
  });
});

describe("calibration", () => {
  it("20,000 drawn (Z + 1.5) / root of chi-square(4)/4: the shares below 0, 1.5 and 4 within 4 standard errors (.014)", () => {
    const normal = seededNormals(11);
    const runs = 20_000;
    const drawn = Array.from({ length: runs }, () => {
      const squares = normal() ** 2 + normal() ** 2 + normal() ** 2 + normal() ** 2;
      return (normal() + 1.5) / Math.sqrt(squares / 4);
    });
    for (const at of [0, 1.5, 4]) {
      const chance = noncentralTCdf(at, 4, 1.5);
      const share = drawn.filter((value) => value <= at).length / runs;
      expectNear(share, chance, { abs: monteCarloBand(chance, runs) }, `below ${at}`);
    }
  });
});
