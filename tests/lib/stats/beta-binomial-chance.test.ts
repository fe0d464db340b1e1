import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { betaBinomialLogChance } from "@/lib/stats/beta-binomial-chance";
import { logGamma } from "@/lib/stats/log-gamma";
import { expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";
import { drawnGroup } from "./made-groups";
import { monteCarloBand, seededChances } from "./seeded-normals";

interface Input {
  readonly n: number;
  readonly p: number;
  readonly rho: number;
}

describe("reference: exact rational arithmetic", () => {
  it.each(readReference<Input, number[]>("06c_beta_binomial", "bb_chance"))("$id, 0 to n, 12 digits", (one) => {
    const { n, p, rho } = one.input;
    const got = one.expected.map((_, k) => Math.exp(betaBinomialLogChance(k, n, p, rho)));
    expectAllNear(got, one.expected, one.tolerance, one.id);
  });

  it("a half with correlation 1/3 is a chance drawn evenly: 1 / (n + 1) for every count (Bayes 1763)", () => {
    for (let k = 0; k <= 12; k++)
      expectNear(Math.exp(betaBinomialLogChance(k, 12, 0.5, 1 / 3)), 1 / 13, { rel: 1e-13 });
  });
});

describe("too little and bad input", () => {
  it("no trial is certain", () => {
    expect(betaBinomialLogChance(0, 0, 0.3, 0.2)).toBe(0);
  });

  it("6 of 5, a share of 1 and a correlation of 1 are refused", () => {
    expect(() => betaBinomialLogChance(6, 5, 0.5, 0)).toThrow("got 6");
    expect(() => betaBinomialLogChance(1, 5, 1, 0)).toThrow("share must lie between 0 and 1, got 1");
    expect(() => betaBinomialLogChance(1, 5, 0.5, 1)).toThrow("correlation must be in [0, 1), got 1");
  });

  it("a chance below the smallest double keeps its logarithm: 0 of 5000 at a half", () => {
    expectNear(betaBinomialLogChance(0, 5000, 0.5, 0), 5000 * Math.log(0.5), { rel: 1e-13 });
  });
});

describe("invariance", () => {
  const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });
  const correlation = fc.double({ min: 0, max: 0.9, noNaN: true });

  it("chances sum to 1, with mean n p and variance n p (1 - p) (1 + (n - 1) rho)", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), share, correlation, (n, p, rho) => {
        const chances = Array.from({ length: n + 1 }, (_, k) => Math.exp(betaBinomialLogChance(k, n, p, rho)));
        const sum = (of: (k: number) => number) => chances.reduce((total, one, k) => total + one * of(k), 0);
        expectNear(
          sum(() => 1),
          1,
          { rel: 1e-12 },
        );
        expectNear(
          sum((k) => k),
          n * p,
          { rel: 1e-11 },
        );
        expectNear(
          sum((k) => (k - n * p) ** 2),
          n * p * (1 - p) * (1 + (n - 1) * rho),
          { rel: 1e-10 },
        );
      }),
    );
  });

  it("exchanging successes and failures mirrors the share; beta functions by log gamma give the same", () => {
    const counts = fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 30 }));
    fc.assert(
      fc.property(counts, share, fc.double({ min: 0.01, max: 0.9, noNaN: true }), ([k, failures], p, rho) => {
        const n = k + failures;
        const log = betaBinomialLogChance(k, n, p, rho);
        expectNear(betaBinomialLogChance(failures, n, 1 - p, rho), log, { rel: 1e-10, abs: 1e-12 });
        const [a, b] = [p / rho - p, (1 - p) / rho - (1 - p)];
        const beta = (x: number, y: number) => logGamma(x) + logGamma(y) - logGamma(x + y);
        const choose = logGamma(n + 1) - logGamma(k + 1) - logGamma(failures + 1);
        expectNear(log, choose + beta(k + a, failures + b) - beta(a, b), { abs: 1e-9 });
      }),
    );
  });
});

describe("calibration", () => {
  it("20,000 groups of 5 from an urn, share 0.6, correlation 0.2: each count as often as it says, within 4 standard errors", () => {
    const chance = seededChances(71);
    const runs = 20_000;
    const seen = new Array<number>(6).fill(0);
    for (let run = 0; run < runs; run++) {
      const { successes } = drawnGroup(5, 0.6, 0.2, chance);
      seen[successes] = (seen[successes] as number) + 1 / runs;
    }
    seen.forEach((share, k) => {
      const expected = Math.exp(betaBinomialLogChance(k, 5, 0.6, 0.2));
      expectNear(share, expected, { abs: monteCarloBand(expected, runs) }, `${k} of 5`);
    });
  });
});
