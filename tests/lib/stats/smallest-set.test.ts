import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { smallestSet } from "@/lib/stats/smallest-set";

describe("reference: by hand", () => {
  it("weights 1 5 0 3 1: half is held by index 1 alone, 0.8 by 1 and 3, 0.85 takes the earlier of the equals", () => {
    expect(smallestSet([1, 5, 0, 3, 1], 0.5)).toEqual([1]);
    expect(smallestSet([1, 5, 0, 3, 1], 0.8)).toEqual([1, 3]);
    expect(smallestSet([1, 5, 0, 3, 1], 0.85)).toEqual([0, 1, 3]);
  });
});

describe("too little and bad input", () => {
  it("no weight throws", () => {
    expect(() => smallestSet([0, 0], 0.8)).toThrow("0");
    expect(() => smallestSet([], 0.8)).toThrow("0");
  });
});

describe("invariance", () => {
  it("it holds the share, and without its lightest member it wouldn't", () => {
    const weights = fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(weights, (list) => {
        const total = list.reduce((a, b) => a + b, 0);
        fc.pre(total > 0);
        const held = smallestSet(list, 0.8).map((i) => list[i] as number);
        const sum = held.reduce((a, b) => a + b, 0);
        expect(sum).toBeGreaterThanOrEqual(0.8 * total - 1e-9);
        expect(sum - Math.min(...held)).toBeLessThan(0.8 * total);
      }),
    );
  });
});
