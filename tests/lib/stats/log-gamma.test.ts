import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { logGamma } from "@/lib/stats/log-gamma";
import { expectNear } from "@/tests/reference/read-reference";

describe("logGamma", () => {
  it("reference: half the log of pi at 1/2, log of 9! at 10 (Abramowitz & Stegun 1964, 6.1.8 and 6.1.6)", () => {
    expectNear(logGamma(0.5), 0.5 * Math.log(Math.PI), { rel: 1e-14, abs: 3e-15 });
    expectNear(logGamma(10), Math.log(362880), { rel: 1e-14, abs: 3e-15 });
  });

  it.each([
    [1e-8, 18.42068073818021],
    [0.1, 2.252712651734206],
    [1.5, -0.12078223763524522],
    [100.25, 360.28455963776423],
    [1e6, 12815504.569147611],
  ])("reference: %d as mpmath with 40 digits has it", (x, expected) => {
    expectNear(logGamma(x), expected, { rel: 1e-14, abs: 3e-15 });
  });

  it("reference: 0 at 1 and 2 within 1e-14", () => {
    expectNear(logGamma(1), 0, { abs: 1e-14 });
    expectNear(logGamma(2), 0, { abs: 1e-14 });
  });

  it("bad input: 0, below 0 and NaN are refused", () => {
    for (const x of [0, -1, Number.NaN]) expect(() => logGamma(x)).toThrow(`got ${x}`);
  });

  it("invariance: log gamma(x + 1) = log gamma(x) + log x", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1000, noNaN: true }), (x) => {
        expectNear(logGamma(x + 1), logGamma(x) + Math.log(x), { rel: 1e-13, abs: 1e-13 });
      }),
    );
  });
});
