import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { betaCdf, betaQuantile, betaUpperTail } from "@/lib/stats/beta-distribution";
import { expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";

interface Input {
  readonly a: number;
  readonly b: number;
  readonly x: number[];
}
interface Binomial {
  readonly n: number;
  readonly p: number;
  readonly x: number[];
}

describe("reference: mpmath with 40 digits", () => {
  // The file holds 0 for beta(81, 183) at 1e-5; its true value is below the smallest double.
  it.each(readReference<Input, number[]>("02a_distributions", "beta_cdf"))("$id, 12 digits", ({ input, ...one }) => {
    expectAllNear(
      input.x.map((x) => betaCdf(x, input.a, input.b)),
      one.expected,
      one.tolerance,
      one.id,
    );
  });

  it.each(readReference<Input, number[]>("02a_distributions", "beta_q"))("$id, 9 digits", ({ input, ...one }) => {
    expectAllNear(
      input.x.map((p) => betaQuantile(p, input.a, input.b)),
      one.expected,
      one.tolerance,
      one.id,
    );
  });

  it.each(readReference<Binomial, number[]>("02a_distributions", "binom_cdf"))(
    "$id: at most k of n is beta(n - k, k + 1) below 1 - p, 12 digits down to 1e-200",
    ({ input: { n, p, x }, ...one }) => {
      const got = x.map((k) => (k === n ? 1 : betaUpperTail(p, k + 1, n - k)));
      expectAllNear(got, one.expected, one.tolerance, one.id);
    },
  );
});

describe("too little and bad input", () => {
  it("nothing lies below 0, everything below 1", () => {
    expect([betaCdf(0, 2, 3), betaCdf(1, 2, 3), betaUpperTail(0, 2, 3), betaUpperTail(1, 2, 3)]).toEqual([0, 1, 1, 0]);
  });

  it("an x outside 0 to 1, NaN, a shape of 0 and p of 0 or 1 are refused", () => {
    for (const x of [-0.1, 1.1, Number.NaN]) expect(() => betaCdf(x, 2, 3)).toThrow(`x must lie in 0 to 1, got ${x}`);
    expect(() => betaCdf(0.5, 0, 3)).toThrow("a must be above 0 and finite, got 0");
    expect(() => betaQuantile(0.5, 2, -1)).toThrow("b must be above 0 and finite, got -1");
    for (const p of [0, 1]) expect(() => betaQuantile(p, 2, 3)).toThrow(`got ${p}`);
  });
});

describe("invariance", () => {
  const shape = fc.integer({ min: 1, max: 40 });
  const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });

  it("exchanging the shapes mirrors the distribution", () => {
    fc.assert(
      fc.property(share, shape, shape, (x, a, b) => {
        expectNear(betaCdf(x, a, b) + betaUpperTail(x, a, b), 1, { rel: 1e-12 });
        expectNear(betaUpperTail(x, a, b), betaCdf(1 - x, b, a), { rel: 1e-12 });
      }),
    );
  });

  it("whole shapes: equals the sum of binomial chances, brute force", () => {
    fc.assert(
      fc.property(share, fc.integer({ min: 1, max: 8 }), fc.integer({ min: 1, max: 8 }), (x, a, b) => {
        const n = a + b - 1;
        let sum = 0;
        let choose = 1;
        for (let k = 0; k <= n; k++) {
          if (k >= a) sum += choose * x ** k * (1 - x) ** (n - k);
          choose = (choose * (n - k)) / (k + 1);
        }
        expectNear(betaCdf(x, a, b), sum, { rel: 1e-12 });
      }),
    );
  });
});
