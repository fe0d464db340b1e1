import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { startScale } from "@/lib/stats/start-scale";
import { normal, seeded } from "./made-series";

describe("reference: each of the four scales, by hand", () => {
  it("steps 1 2 3 between 0 1 3 6: median 2 / 0.9539 = 2.0966", () => {
    expect(startScale([0, 1, 3, 6], 0, 1)).toBeCloseTo(2 / 0.9539, 12);
  });
  it("a staircase 0 0 0 8 8 8 has median step 0: 0.3 of its sd 4.3818", () => {
    expect(startScale([0, 0, 0, 8, 8, 8], 0, 1)).toBeCloseTo(0.3 * Math.sqrt(19.2), 12);
  });
  it("constant values: 0.07 of the replicate sd, and of the reading error where that is 0 too", () => {
    expect(startScale([3, 3, 3], 2, 1)).toBeCloseTo(0.14, 12);
    expect(startScale([3, 3, 3], 0, 1)).toBeCloseTo(0.07, 12);
  });
});

describe("too little and bad input", () => {
  it("one value throws", () => {
    expect(() => startScale([1], 1, 1)).toThrow("1");
  });
});

describe("invariance", () => {
  it("multiplying everything multiplies it, shifting does nothing", () => {
    const list = fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: 2, maxLength: 9 });
    fc.assert(
      fc.property(list, (values) => {
        const moved = values.map((value) => 3 * value + 1);
        expect(startScale(moved, 6, 3)).toBeCloseTo(3 * startScale(values, 2, 1), 8);
      }),
    );
  });
});

describe("calibration", () => {
  it("20 independent values of sd 2: median over 300 draws within 8 % of 2", () => {
    const random = seeded(5);
    const scales = Array.from({ length: 300 }, () =>
      startScale(
        Array.from({ length: 20 }, () => 2 * normal(random)),
        0,
        1,
      ),
    ).sort((a, b) => a - b);
    expect(Math.abs((scales[150] as number) / 2 - 1)).toBeLessThan(0.08);
  });
});
