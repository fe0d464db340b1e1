import { describe, expect, it } from "vitest";
import { unitVariance } from "@/lib/stats/unit-variance";
import { normal, randomFrom } from "@/seed/random";

describe("reference: the variance of a sum of independent parts (from memory)", () => {
  it("days of sd 2, spread 1.5, known variance .7: 4 x 1.5 + .7 = 6.7", () => {
    expect(unitVariance({ meanSpread: 1.5, meanVariance: 0.7 }, 2)).toBeCloseTo(6.7, 12);
  });
});

describe("too little and bad input", () => {
  it("days that do not differ leave the known variance; an sd that is none is a mistake", () => {
    expect(unitVariance({ meanSpread: 1, meanVariance: 0.25 }, 0)).toBe(0.25);
    for (const wrong of [-1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => unitVariance({ meanSpread: 1, meanVariance: 0 }, wrong)).toThrow(String(wrong));
  });
});

describe("invariance", () => {
  it("in a unit ten times as small it is a hundred times as large", () => {
    const one = unitVariance({ meanSpread: 1.2, meanVariance: 0.3 }, 0.8);
    expect(unitVariance({ meanSpread: 1.2, meanVariance: 30 }, 8)).toBeCloseTo(100 * one, 10);
  });
});

describe("calibration", () => {
  it("equals the variance of 20,000 drawn values, days of sd 1.5 with errors of variance .4, within 5 %", () => {
    const random = randomFrom(4711, 0);
    const values = Array.from({ length: 20_000 }, () => 1.5 * normal(random) + Math.sqrt(0.4) * normal(random));
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const drawn = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
    expect(drawn / unitVariance({ meanSpread: 1, meanVariance: 0.4 }, 1.5)).toBeGreaterThan(0.95);
    expect(drawn / unitVariance({ meanSpread: 1, meanVariance: 0.4 }, 1.5)).toBeLessThan(1.05);
  });
});
