import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compensatedSum } from "@/lib/stats/compensated-sum";

describe("compensatedSum", () => {
  it("reference: 1 + 1e100 + 1 - 1e100 is 2 (Neumaier 1974), where a plain sum says 0", () => {
    expect(compensatedSum([1, 1e100, 1, -1e100])).toBe(2);
  });

  it("too little: nothing sums to 0", () => {
    expect(compensatedSum([])).toBe(0);
  });

  it("invariance: whole numbers over 1024 sum exactly in any order", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -1e9, max: 1e9 })), (whole) => {
        const exact = whole.reduce((sum, value) => sum + value, 0) / 1024;
        const parts = whole.map((value) => value / 1024);
        expect(compensatedSum(parts)).toBe(exact === 0 ? 0 : exact);
        expect(compensatedSum([...parts].reverse())).toBe(exact === 0 ? 0 : exact);
      }),
    );
  });

  it("invariance: a million tenths sum to 100000 to the last digit but one", () => {
    expect(Math.abs(compensatedSum(new Array(1_000_000).fill(0.1)) - 100_000)).toBeLessThan(1e-10);
  });
});
