import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { seasonTail } from "@/lib/stats/season-tail";

describe("reference: by hand", () => {
  it("0.10 exp(-1.807 (3 - 1.457)) = 0.006155", () => {
    expect(seasonTail(3)).toBeCloseTo(0.1 * Math.exp(-1.807 * 1.543), 14);
    expect(seasonTail(3)).toBeCloseTo(0.006155, 5);
  });
});

describe("too little and bad input", () => {
  it("at and below 1.457, no look included: 1", () => {
    expect([seasonTail(1.457), seasonTail(-4), seasonTail(Number.NEGATIVE_INFINITY)]).toEqual([1, 1, 1]);
  });
  it("NaN throws", () => {
    expect(() => seasonTail(Number.NaN)).toThrow("NaN");
  });
});

describe("invariance", () => {
  it("more evidence never gives a larger p; p stays in [0, 1]", () => {
    const any = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(any, any, (a, b) => {
        expect(seasonTail(Math.max(a, b))).toBeLessThanOrEqual(seasonTail(Math.min(a, b)));
        expect(seasonTail(a)).toBeLessThanOrEqual(1);
      }),
    );
  });
});
