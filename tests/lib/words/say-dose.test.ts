import { expect, it } from "vitest";
import { wordsFor } from "@/lib/words/catalogue";
import { sayDose } from "@/lib/words/say-dose";

const words = wordsFor("en");

it.each([
  [
    { dose: "10 minutes a day; slowly", reps: 15, daysAWeek: 5, stopRule: "it is easy" },
    "15 repeats a day, 10 minutes a day, 5 days a week; slowly; until: it is easy",
  ],
  [{ dose: "slowly", minutesADay: 10 }, "10 minutes a day; slowly"],
  [{ dose: "10 minutes a day", minutesADay: 15 }, "15 minutes a day; 10 minutes a day"],
  [{ dose: "slowly", reps: null, daysAWeek: 1, stopRule: "" }, "one day a week; slowly"],
  [{ dose: "20 reps, 5 days a week" }, "20 reps, 5 days a week"],
  [{ dose: "", reps: 1 }, "once a day"],
  [{ dose: "" }, ""],
])("%j reads: %s", (dose, said) => {
  expect(sayDose(words, dose)).toBe(said);
});
