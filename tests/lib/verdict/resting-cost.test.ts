import { describe, expect, it } from "vitest";
import { dayFromNumber } from "@/lib/domain/calendar-day";
import { restingCost } from "@/lib/verdict/resting-cost";

const days = (...gaps: readonly number[]): string[] => {
  let at = 20_000;
  const numbers = [at];
  for (const gap of gaps) {
    at += gap;
    numbers.push(at);
  }
  return numbers.map(dayFromNumber);
};

describe("what resting costs", () => {
  it("every eighth day: two films to be read are 16 days, of each third film 2 × 3 × 8 = 48", () =>
    expect(restingCost(days(8, 8, 8))).toEqual({ everyFilm: 16, resting: 48 }));
  it("goes by the median, so one long break tells nothing: 7, 7, 90 is 7; 6, 7 is 6.5", () => {
    expect(restingCost(days(7, 90, 7))).toEqual({ everyFilm: 14, resting: 42 });
    expect(restingCost(days(6, 7))).toEqual({ everyFilm: 13, resting: 39 });
  });
  it("two films of one day count once", () =>
    expect(restingCost(days(0, 10, 0))).toEqual({ everyFilm: 20, resting: 60 }));
  it("one day or none is no rhythm", () => {
    expect(restingCost([])).toBeNull();
    expect(restingCost(days(0))).toBeNull();
  });
});
