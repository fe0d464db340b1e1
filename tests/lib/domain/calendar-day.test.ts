import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayFromNumber, dayNumber, daysBetween, isCalendarDay } from "@/lib/domain/calendar-day";
import { neutralValue } from "@/lib/domain/handedness";

describe("days", () => {
  it.each([
    ["2024-02-29", true],
    ["2025-02-29", false],
    ["2026-13-01", false],
    ["2026-04-31", false],
    ["26-04-01", false],
    ["2026-4-1", false],
    ["0001-01-01", true],
    ["2026-09-12T00:00", false],
  ])("%s is a day: %s", (text, is) => expect(isCalendarDay(text)).toBe(is));
  it("1970-01-02 is day 1, and 1969-12-31 day -1", () => {
    expect(dayNumber("1970-01-02")).toBe(1);
    expect(dayNumber("1969-12-31")).toBe(-1);
  });
  it("a text that is no day throws with it", () => expect(() => dayNumber("2026-02-30")).toThrow("2026-02-30"));
  it("numbers and days are each other's inverse, and differences are days between, over clock changes too", () => {
    fc.assert(
      fc.property(fc.integer({ min: -200_000, max: 200_000 }), fc.integer({ min: -500, max: 500 }), (day, gap) => {
        const [a, b] = [dayFromNumber(day), dayFromNumber(day + gap)];
        expect(dayNumber(a)).toBe(day);
        expect(daysBetween(a, b)).toBe(gap);
      }),
    );
  });
});

describe("handedness", () => {
  it("only a left-hander's picture-signed value of a mirrored fundamental is turned: 8 becomes -8", () => {
    expect(neutralValue(8, "left", "picture", "mirrors")).toBe(-8);
    expect(neutralValue(8, "right", "picture", "mirrors")).toBe(8);
    expect(neutralValue(8, "left", "neutral", "mirrors")).toBe(8);
    expect(neutralValue(8, "left", "picture", "same")).toBe(8);
    expect(Object.is(neutralValue(0, "left", "picture", "mirrors"), 0)).toBe(true);
  });
});
