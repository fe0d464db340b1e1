import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normalCdf } from "@/lib/stats/normal-distribution";
import { tabulatedNormalCdf, tabulatedNormalDensity } from "@/lib/stats/tabulated-normal";

describe("reference: the library's function", () => {
  it("20,001 points from -10 to 10: cdf to 1e-9, density to 2e-5", () => {
    let cdf = 0;
    let density = 0;
    for (let i = 0; i <= 20_000; i++) {
      const z = -10 + i / 1000;
      cdf = Math.max(cdf, Math.abs(tabulatedNormalCdf(z) - normalCdf(z)));
      const exact = Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
      density = Math.max(density, Math.abs(tabulatedNormalDensity(z) - exact));
    }
    expect(cdf).toBeLessThan(1e-9);
    expect(density).toBeLessThan(2e-5);
  });
});

describe("too little and bad input", () => {
  it("infinities are 0 and 1; NaN stays NaN", () => {
    expect([tabulatedNormalCdf(Number.NEGATIVE_INFINITY), tabulatedNormalCdf(Number.POSITIVE_INFINITY)]).toEqual([
      0, 1,
    ]);
    expect(tabulatedNormalCdf(Number.NaN)).toBeNaN();
  });
});

describe("invariance", () => {
  it("it never falls, and Phi(-z) = 1 - Phi(z)", () => {
    const z = fc.double({ min: -9, max: 9, noNaN: true });
    fc.assert(
      fc.property(z, z, (a, b) => {
        expect(tabulatedNormalCdf(Math.min(a, b))).toBeLessThanOrEqual(tabulatedNormalCdf(Math.max(a, b)));
        expect(tabulatedNormalCdf(-a)).toBeCloseTo(1 - tabulatedNormalCdf(a), 14);
      }),
    );
  });
});
