import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { tapMinutes } from "@/lib/report/tap-minutes";

describe("tapMinutes", () => {
  it.each([
    [null, [5, 10, 15]],
    [10, [5, 10, 15]],
    [20, [10, 20, 30]],
    [12, [5, 12, 20]],
    [15, [5, 15, 25]],
    [5, [3, 5, 8]],
    [1, [1, 2]],
    [240, [120, 240]],
  ] as const)("of a dose of %s minutes are %j", (dose, taps) => {
    expect(tapMinutes(dose)).toEqual(taps);
  });

  it("hold the dose itself, ascending, at most three, within what a day may have", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), (dose) => {
        const taps = tapMinutes(dose);
        expect(taps).toContain(dose);
        expect(taps.length).toBeLessThanOrEqual(3);
        expect([...taps].sort((a, b) => a - b)).toEqual(taps);
        expect(taps.every((minutes) => Number.isInteger(minutes) && minutes >= 1 && minutes <= 300)).toBe(true);
        expect(new Set(taps).size).toBe(taps.length);
      }),
    );
  });
});
