import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { seasonTail } from "@/lib/stats/season-tail";

describe("reference: by hand", () => {
  it("twenty looks: 0.1 exp(-1.6 (3 - 0.81)) = 0.00301", () => {
    expect(seasonTail(3, 20)).toBeCloseTo(0.1 * Math.exp(-1.6 * 2.19), 14);
    expect(seasonTail(3, 20)).toBeCloseTo(0.00301, 5);
  });
  it("thirty looks lie halfway between twenty and forty: 0.1 exp(-1.5 (3 - 1.485))", () => {
    expect(seasonTail(3, 30)).toBeCloseTo(0.1 * Math.exp(-1.55 * 2.11), 14);
  });
});

describe("too little and bad input", () => {
  it("little evidence, or no look yet: 1", () => {
    expect([seasonTail(-4, 20), seasonTail(Number.NEGATIVE_INFINITY, 20)]).toEqual([1, 1]);
  });
  it("outside 6 to 40 looks the nearest constants hold", () => {
    expect(seasonTail(2, 1)).toBe(seasonTail(2, 6));
    expect(seasonTail(2, 200)).toBe(seasonTail(2, 40));
  });
  it("NaN and no look throw", () => {
    expect(() => seasonTail(Number.NaN, 20)).toThrow("NaN");
    expect(() => seasonTail(1, 0)).toThrow("0");
  });
});

describe("invariance", () => {
  it("more evidence never gives a larger p, more looks never a smaller one where it matters; p stays in [0, 1]", () => {
    const any = fc.double({ min: -50, max: 50, noNaN: true });
    const looks = fc.integer({ min: 1, max: 60 });
    fc.assert(
      fc.property(any, any, looks, looks, (a, b, m, n) => {
        expect(seasonTail(Math.max(a, b), n)).toBeLessThanOrEqual(seasonTail(Math.min(a, b), n));
        expect(seasonTail(a, n)).toBeLessThanOrEqual(1);
        const beyond = Math.max(1.6, a);
        expect(seasonTail(beyond, Math.max(m, n))).toBeGreaterThanOrEqual(seasonTail(beyond, Math.min(m, n)));
      }),
    );
  });
});
