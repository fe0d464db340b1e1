import fc from "fast-check";
import { expect, test } from "vitest";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { mondayOf, type Practice, practiceWeeks } from "@/lib/domain/practice";

const entry = (day: string, more: Partial<Practice> = {}): Practice => ({
  ...{ id: day, day, assignmentId: null, minutes: 15, balls: null, felt: null, source: "told", who: "Coach" },
  ...{ recordedAt: "2026-05-10T10:00:00.000Z", voidedAt: null },
  ...more,
});

test("a week begins on its Monday, before 1970 too", () => {
  expect(["2026-05-04", "2026-05-10", "2026-05-11", "1969-12-31"].map(mondayOf)).toEqual([
    "2026-05-04",
    "2026-05-04",
    "2026-05-11",
    "1969-12-29",
  ]);
  fc.assert(
    fc.property(fc.integer({ min: -20_000, max: 40_000 }), (number) => {
      const day = dayFromNumber(number);
      const back = number - dayNumber(mondayOf(day));
      expect(back >= 0 && back < 7).toBe(true);
      expect(new Date(`${mondayOf(day)}T00:00:00Z`).getUTCDay()).toBe(1);
    }),
    { numRuns: 400, seed: 15 },
  );
});

test("a week sums what stands; what isn't known is no zero; two entries of a day are one day", () => {
  const weeks = practiceWeeks([
    entry("2026-05-12", { balls: 40, minutes: null }),
    entry("2026-05-04"),
    entry("2026-05-04", { minutes: 20, balls: 30 }),
    entry("2026-05-10"),
    entry("2026-05-09", { voidedAt: "2026-05-11T10:00:00.000Z", minutes: 600 }),
  ]);
  expect(weeks).toEqual([
    { monday: "2026-05-04", minutes: 15 + 20 + 15, balls: 30, days: 2, toldDays: 2, hardDays: 0 },
    { monday: "2026-05-11", minutes: null, balls: 40, days: 1, toldDays: 1, hardDays: 0 },
  ]);
});

test("days that the family told of, and days that felt hard, are counted apart; what the coach saw is neither told nor lost", () => {
  const [week] = practiceWeeks([
    entry("2026-05-04", { source: "coach", felt: "hard" }),
    entry("2026-05-05", { source: "family", felt: "easy" }),
    entry("2026-05-05", { source: "coach", felt: "hard" }),
    entry("2026-05-06", { source: "family", felt: "hard", voidedAt: "2026-05-07T10:00:00.000Z" }),
  ]);
  expect(week).toMatchObject({ days: 2, toldDays: 1, hardDays: 2 });
});
