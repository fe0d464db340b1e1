import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectedDistance } from "@/lib/stats/expected-distance";
import { normal, seeded } from "./made-series";

describe("reference: by hand", () => {
  it("level on the only edge, sd 2: 2 / sqrt(2 pi) = 0.797885", () => {
    expect(expectedDistance(5, 2, { low: null, high: 5 })).toBeCloseTo(0.7978845608, 9);
  });
  it("without spread it is the plain distance", () => {
    expect([9, 3, -4].map((level) => expectedDistance(level, 0, { low: -1, high: 5 }))).toEqual([4, 0, 3]);
  });
});

describe("too little and bad input", () => {
  it("a band without edges gives 0; edges the wrong way round throw", () => {
    expect(expectedDistance(5, 2, { low: null, high: null })).toBe(0);
    expect(() => expectedDistance(5, 2, { low: 3, high: 1 })).toThrow("3 > 1");
  });
});

describe("invariance", () => {
  it("mirroring level and band changes nothing; it is never below the plain distance", () => {
    const number = fc.double({ min: -20, max: 20, noNaN: true });
    fc.assert(
      fc.property(number, number, fc.double({ min: 0, max: 5, noNaN: true }), (level, low, width) => {
        const there = expectedDistance(level, 2, { low, high: low + width });
        expect(expectedDistance(-level, 2, { low: -low - width, high: -low })).toBeCloseTo(there, 9);
        expect(there).toBeGreaterThanOrEqual(expectedDistance(level, 0, { low, high: low + width }) - 1e-9);
      }),
    );
  });
});

describe("calibration: 40,000 draws", () => {
  it("level 1, sd 3, band -2 to 3: the mean of the draws within 0.03 (four standard errors)", () => {
    const random = seeded(6);
    let sum = 0;
    for (let i = 0; i < 40_000; i++) {
      const draw = 1 + 3 * normal(random);
      sum += Math.max(0, -2 - draw, draw - 3);
    }
    expect(Math.abs(sum / 40_000 - expectedDistance(1, 3, { low: -2, high: 3 }))).toBeLessThan(0.03);
  });
});
