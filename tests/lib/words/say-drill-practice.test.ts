import { expect, it } from "vitest";
import type { DrillPractice } from "@/lib/domain/drill-practice";
import { wordsFor } from "@/lib/words/catalogue";
import { sayDrillPractice } from "@/lib/words/say-drill-practice";

const words = wordsFor("en");
const bare: DrillPractice = {
  ...{
    from: "2026-09-01",
    to: "2026-09-21",
    days: 21,
    stoppedDays: 0,
    restDays: 7,
    asked: null,
    askedMinutes: null,
    practised: 0,
  },
  ...{ minutes: null, balls: null, lastLogged: null, unnamed: 0 },
};

it.each([
  [{}, "nothing logged, 1–21 Sep"],
  [{ asked: 10 }, "nothing logged of 10 asked, 1–21 Sep"],
  [{ asked: 10, practised: 9, minutes: 90, balls: 30 }, "9 days logged of 10 asked, 90 minutes, 30 balls, 1–21 Sep"],
  [
    { asked: 10, askedMinutes: 150, practised: 9, minutes: 90 },
    "9 days logged of 10 asked, 90 minutes of 150 asked, 1–21 Sep",
  ],
  [{ asked: 10, askedMinutes: 150, practised: 9 }, "9 days logged of 10 asked, 1–21 Sep"],
  [{ practised: 1, minutes: 1 }, "one day logged, one minute, 1–21 Sep"],
] as [Partial<DrillPractice>, string][])("%j reads: %s", (change, said) => {
  expect(sayDrillPractice(words, { ...bare, ...change })).toBe(said);
  // Silence of the log is never called idleness.
  expect(said).not.toMatch(/not practised|no practice|missed/);
});
