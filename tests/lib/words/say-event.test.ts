import { expect, test } from "vitest";
import { wordsFor } from "@/lib/words/catalogue";
import { sayEvent, sayEventDays } from "@/lib/words/say-event";

const words = wordsFor("en");
const base = { id: "e", note: "", rebaselines: [], day: "2026-05-03" };

test("a day, a stretch, or since when it goes on", () => {
  expect(sayEventDays(words, { ...base, kind: "growth" })).toBe("3 May");
  expect(sayEventDays(words, { ...base, kind: "break", endDay: "2026-05-09" })).toBe("3–9 May");
  for (const kind of ["break", "injury"] as const) expect(sayEventDays(words, { ...base, kind })).toBe("since 3 May");
});

test("in a chart: kind and days, and never where it hurts", () => {
  expect(sayEvent(words, { ...base, kind: "injury", place: "wrist" })).toBe("pause for an injury, since 3 May");
});
