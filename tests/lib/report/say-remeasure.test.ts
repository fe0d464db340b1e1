import { expect, it } from "vitest";
import { sayRemeasure } from "@/lib/report/say-remeasure";
import { wordsFor } from "@/lib/words/catalogue";

it.each([
  [null, "no day is set"],
  ["2026-09-10", "Thu 10 Sep, 2 days ago"],
  ["2026-09-11", "Fri 11 Sep, one day ago"],
  ["2026-09-12", "Sat 12 Sep, today"],
  ["2026-09-13", "Sun 13 Sep, in one day"],
  ["2026-10-03", "Sat 3 Oct, in 21 days"],
])("to be measured again on %s, on 12 September: %s", (day, said) => {
  expect(sayRemeasure(wordsFor("en"), day, "2026-09-12")).toBe(said);
});
