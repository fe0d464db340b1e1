import { expect, it } from "vitest";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { type Stopping, stoppedDays } from "@/lib/domain/stopped-days";

const days = (events: readonly Stopping[], from: string, to: string): readonly string[] =>
  [...stoppedDays(events, dayNumber(from), dayNumber(to))].sort((a, b) => a - b).map(dayFromNumber);

it("counts the days of pauses and injuries within the stretch once each, both ends; one without an end goes on", () => {
  const events: Stopping[] = [
    { kind: "injury", day: "2026-08-30", endDay: "2026-09-02" },
    { kind: "pause", day: "2026-09-02", endDay: "2026-09-03" },
    { kind: "pause", day: "2026-09-06" },
  ];
  expect(days(events, "2026-09-01", "2026-09-07")).toEqual([
    ...["2026-09-01", "2026-09-02", "2026-09-03"],
    ...["2026-09-06", "2026-09-07"],
  ]);
});

it("counts no break, nothing that happened on a day, and nothing of a stretch that ends before it begins", () => {
  const events: Stopping[] = [
    { kind: "break", day: "2026-09-01", endDay: "2026-09-03" },
    { kind: "growth", day: "2026-09-02" },
  ];
  expect(days(events, "2026-09-01", "2026-09-07")).toEqual([]);
  expect(days([{ kind: "pause", day: "2026-09-01", endDay: null }], "2026-09-07", "2026-09-06")).toEqual([]);
});
