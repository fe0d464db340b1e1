import { expect, test } from "vitest";
import { dayNumber } from "@/lib/domain/calendar-day";
import type { Practice } from "@/lib/domain/practice";
import { practiceLanes } from "@/lib/report/practice-lanes";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const rest = { assignmentId: null, felt: null, source: "told", who: "Coach", recordedAt: "", voidedAt: null } as const;
const entry = (day: string, minutes: number | null, balls: number | null): Practice => ({
  ...{ id: `${day}${minutes}`, day, minutes, balls },
  ...rest,
});
const days = { first: "2026-05-06", last: "2026-05-20" };

test("minutes and balls have a lane each, a bar a week, as high as its share of the highest; a cut week keeps its whole sum", () => {
  const practice = practiceLanes(
    words,
    [entry("2026-05-04", 30, null), entry("2026-05-12", 60, 50), entry("2026-05-13", 60, null)],
    days,
  );
  expect(practice?.lanes).toEqual([
    {
      label: "practice, minutes a week, 120 at most",
      bars: [
        {
          ...{ from: dayNumber("2026-05-06"), to: dayNumber("2026-05-11"), share: 30 / 120 },
          label: "4–10 May: 30 minutes on one day, as the family told of 1",
        },
        {
          ...{ from: dayNumber("2026-05-11"), to: dayNumber("2026-05-18"), share: 1 },
          label: "11–17 May: 120 minutes on 2 days, as the family told of 2",
        },
      ],
    },
    {
      label: "practice, balls a week, 50 at most",
      bars: [
        {
          ...{ from: dayNumber("2026-05-11"), to: dayNumber("2026-05-18"), share: 1 },
          label: "11–17 May: 50 balls on 2 days, as the family told of 2",
        },
      ],
    },
  ]);
  expect(practice?.summary).toBe(
    "Practice was logged on 3 days of 2 weeks, 150 minutes, 50 balls in all; the family told of 3 of the days.",
  );
  expect(practice?.table.rows.map(({ cells }) => cells)).toEqual([
    ["11–17 May", "120", "50", "2", "2", "0"],
    ["4–10 May", "30", "", "1", "1", "0"],
  ]);
});

test("nothing in that time, or all of it taken back: no lane at all", () => {
  expect(practiceLanes(words, [], days)).toBeNull();
  expect(practiceLanes(words, [entry("2026-04-01", 30, null)], days)).toBeNull();
  expect(practiceLanes(words, [{ ...entry("2026-05-12", 30, null), voidedAt: "now" }], days)).toBeNull();
});

test("what the family wrote down and what felt hard is said with the bar; what the coach saw is said as it was", () => {
  const seen = { ...entry("2026-05-12", 30, null), source: "coach" as const };
  const practice = practiceLanes(
    words,
    [seen, { ...entry("2026-05-13", 10, null), source: "family", felt: "hard" }],
    days,
  );
  expect(practice?.lanes[0]?.bars[0]?.label).toBe(
    "11–17 May: 40 minutes on 2 days, as the family told of 1, felt hard on 1",
  );
  expect(practiceLanes(words, [seen], days)?.lanes[0]?.bars[0]?.label).toBe("11–17 May: 30 minutes on one day");
  expect(practiceLanes(words, [seen], days)?.summary).toBe(
    "Practice was logged on one day of one week, 30 minutes in all.",
  );
});
