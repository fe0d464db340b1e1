import { expect, test } from "vitest";
import { familyMonths } from "@/lib/report/family-months";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");

test.each([
  ["2026-03-02", "2026-03-30", "March", "March"],
  ["2026-03-28", "2026-04-06", "March, April", "March or April"],
  ["2026-03-28", "2026-06-06", "March to June", "March to June"],
  ["2025-12-28", "2026-01-06", "December 2025, January 2026", "December 2025 or January 2026"],
  ["2025-04-02", "2026-04-30", "April 2025 to April 2026", "April 2025 to April 2026"],
  ["2025-04-02", "2025-04-30", "April 2025", "April 2025"],
])("%s to %s is %s, or %s", (from, to, stretch, or) => {
  const reader = { reader: "other", today: "2026-07-01" } as const;
  expect(familyMonths(words, [from, to], "stretch", reader)).toBe(stretch);
  expect(familyMonths(words, [from, to], "or", reader)).toBe(or);
});

test("to the youngest no year is said", () => {
  const reader = { reader: "young", today: "2026-07-01" } as const;
  expect(familyMonths(words, ["2025-12-28", "2026-01-06"], "or", reader)).toBe("December or January");
});
