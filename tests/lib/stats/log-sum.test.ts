import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { logSum } from "@/lib/stats/log-sum";
import { expectNear } from "@/tests/reference/read-reference";

describe("logSum", () => {
  it("reference: log 1 + log 2 + log 3 as numbers is log 6", () => {
    expectNear(logSum([Math.log(1), Math.log(2), Math.log(3)]), Math.log(6), { rel: 1e-15 });
  });

  it("reference: two of e^-5000 are e^(-5000 + log 2), where exp alone says 0", () => {
    expectNear(logSum([-5000, -5000]), -5000 + Math.log(2), { rel: 1e-15 });
  });

  it("too little and bad input: nothing is the log of 0, NaN and infinity are refused", () => {
    expect(logSum([])).toBe(Number.NEGATIVE_INFINITY);
    expect(logSum([Number.NEGATIVE_INFINITY])).toBe(Number.NEGATIVE_INFINITY);
    expect(() => logSum([0, Number.NaN])).toThrow("got NaN");
    expect(() => logSum([Number.POSITIVE_INFINITY])).toThrow("got Infinity");
  });

  it("invariance: adding c to every log adds c", () => {
    const log = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(fc.array(log, { minLength: 1 }), log, (logs, c) => {
        expectNear(logSum(logs.map((one) => one + c)), logSum(logs) + c, { abs: 1e-12 });
      }),
    );
  });
});
