import { expect, test } from "vitest";
import { dayNumber } from "@/lib/domain/calendar-day";
import { eventRibbons, sayRibbons } from "@/lib/report/event-ribbons";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const base = { id: "e", note: "", rebaselines: [] };
const days = { first: "2026-03-01", last: "2026-06-30" };

test("a break is drawn from its first day to its last, cut at the axis; a day is a day; what lies outside isn't drawn", () => {
  const events = [
    { ...base, kind: "break", day: "2026-02-20", endDay: "2026-03-05" },
    { ...base, kind: "new-club", day: "2026-04-04", note: "an inch longer" },
    { ...base, kind: "injury", day: "2026-06-20", endDay: "2026-07-20", place: "wrist" },
    { ...base, kind: "reader-change", day: "2026-05-01", note: "Robin" },
    { ...base, kind: "break", day: "2026-01-20", endDay: "2026-02-05" },
    { ...base, kind: "growth", day: "2026-07-01" },
  ] as const;
  expect(eventRibbons(words, events, days)).toEqual([
    { from: dayNumber("2026-03-01"), to: dayNumber("2026-03-05"), label: "break, 20 Feb – 5 Mar" },
    { from: dayNumber("2026-04-04"), to: dayNumber("2026-04-04"), label: "new clubs, 4 Apr" },
    { from: dayNumber("2026-06-20"), to: dayNumber("2026-06-30"), label: "pause for an injury, 20 Jun – 20 Jul" },
    { from: dayNumber("2026-05-01"), to: dayNumber("2026-05-01"), label: "Robin reads, 1 May" },
  ]);
});

test("a break or a pause without a last day reaches to the last day drawn with an open end, also from before the axis", () => {
  const events = [
    { ...base, kind: "injury", day: "2026-05-03", place: "wrist" },
    { ...base, kind: "break", day: "2025-11-03", endDay: null },
    { ...base, kind: "injury", day: "2026-06-30" },
    { ...base, kind: "injury", day: "2026-07-01" },
  ] as const;
  const last = dayNumber("2026-06-30");
  const ribbons = eventRibbons(words, events, days);
  expect(ribbons).toEqual([
    { from: dayNumber("2026-05-03"), to: last, label: "pause for an injury, since 3 May", end: "open" },
    { from: dayNumber("2026-03-01"), to: last, label: "break, since 3 Nov", end: "open" },
    { from: last, to: last, label: "pause for an injury, since 30 Jun", end: "open" },
  ]);
  expect(sayRibbons(words, ribbons.slice(0, 2))).toBe(
    "Marked under the time axis: pause for an injury, since 3 May; break, since 3 Nov.",
  );
  expect(sayRibbons(words, [])).toBe("");
});
