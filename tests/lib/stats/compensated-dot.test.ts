import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compensatedDot } from "@/lib/stats/compensated-dot";

/** The same sum of products in whole-number arithmetic of any size. */
function exactDot(a: readonly number[], b: readonly number[]): number {
  return Number(a.reduce((sum, value, i) => sum + BigInt(value) * BigInt(b[i] as number), 0n));
}

describe("compensatedDot", () => {
  it("reference: (1e9 + 1)(1e9 - 1) - 1e9 x 1e9 is -1, where a plain sum says 0", () => {
    expect(compensatedDot([1e9 + 1, -1e9], [1e9 - 1, 1e9])).toBe(-1);
  });

  it("too little and bad input: nothing gives 0, unequal lengths are refused", () => {
    expect(compensatedDot([], [])).toBe(0);
    expect(() => compensatedDot([1], [1, 2])).toThrow("lists must have equal lengths, got 1 and 2");
  });

  it("invariance: equals whole-number arithmetic of any size, brute force", () => {
    const whole = fc.integer({ min: -(2 ** 50), max: 2 ** 50 });
    fc.assert(
      fc.property(fc.array(fc.tuple(whole, whole), { maxLength: 20 }), (pairs) => {
        const a = pairs.map((pair) => pair[0]);
        const b = pairs.map((pair) => pair[1]);
        const exact = exactDot(a, b);
        expect(Math.abs(compensatedDot(a, b) - exact)).toBeLessThanOrEqual(Math.abs(exact) * 2 ** -50);
      }),
    );
  });
});
