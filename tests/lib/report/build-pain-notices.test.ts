import { expect, test } from "vitest";
import { buildPainNotices } from "@/lib/report/build-pain-notices";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const said = (day: string, place: string) => ({ id: day, day, place, who: "family", recordedAt: `${day}T09:00:00Z` });

test("the latest day of the season is said with its place, the others are counted, earlier seasons aren't told", () => {
  expect(buildPainNotices(words, [], "2026-01-01")).toEqual([]);
  expect(buildPainNotices(words, [said("2025-05-03", "back")], "2026-01-01")).toEqual([]);
  expect(buildPainNotices(words, [said("2026-05-03", "back")], "2026-01-01")).toEqual([
    "Said on 3 May that it hurts: back; the task was stopped. See Practice.",
  ]);
  const three = [
    said("2025-12-30", "hip"),
    said("2026-05-03", "back"),
    said("2026-05-03", "back"),
    said("2026-06-01", "wrist"),
  ];
  expect(buildPainNotices(words, three, "2026-01-01")).toEqual([
    "Said on 1 Jun that it hurts: wrist; the task was stopped. On one other day of the season, too. See Practice.",
  ]);
});
