import fc from "fast-check";
import { expect, it } from "vitest";
import { wordsFor } from "@/lib/words/catalogue";
import { minutesInDose } from "@/lib/words/minutes-in-dose";

const words = wordsFor("en");

it("minutes that have their field are those, whatever the words begin with", () => {
  expect(minutesInDose(words, { dose: "10 minutes a day; slowly", minutesADay: 12 })).toEqual({
    ...{ minutes: 12, words: "10 minutes a day; slowly" },
  });
});

it("of a dose from before, minutes and words that were put together come apart as they were, in both languages", () => {
  for (const language of [words, wordsFor("en-XA")])
    fc.assert(
      fc.property(fc.option(fc.integer({ min: 1, max: 300 })), fc.string({ maxLength: 30 }), (minutes, own) => {
        const before = own.trim();
        // Words that themselves begin like minutes are read as minutes: nobody typed both.
        fc.pre(minutes !== null || minutesInDose(language, { dose: before }).minutes === null);
        const said = minutes === null ? "" : language.say("dose.minutes", { minutes });
        const dose = [said, before].filter((part) => part !== "").join("; ");
        expect(minutesInDose(language, { dose, minutesADay: null })).toEqual({ minutes, words: before });
      }),
      { numRuns: 200, seed: 6 },
    );
});

it("301 minutes are words", () => {
  expect(minutesInDose(words, { dose: "301 minutes a day" })).toEqual({ minutes: null, words: "301 minutes a day" });
});
