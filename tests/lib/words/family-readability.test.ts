import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { messageBranches } from "./message-branches";
import { readingGrade, sentencesOf } from "./reading-grade";

const FOLDER = path.resolve(import.meta.dirname, "../../../lib/words/messages/en");

/** Words that a family reads beyond grade 6, each with its reason. */
const HARDER: Readonly<Record<string, string>> = {
  "family.pain.grown-ups": "for grown-ups, and SEASON.md 25 binds it word by word",
  "family.task.missed": "SEASON.md 25 binds it; “double tomorrow” is two words of three",
  "family-story.why.real": "SEASON.md 25 binds “… more videos on different days will probably show it”",
  "family-story.why.nothing": "said as the plan that SEASON.md 25 binds",
};

/** Every message of a family's page, message, file and letter. */
function familyMessages(): readonly (readonly [string, string])[] {
  return readdirSync(FOLDER)
    .flatMap((file) =>
      Object.entries(JSON.parse(readFileSync(path.join(FOLDER, file), "utf8")) as Record<string, string>),
    )
    .filter(([key]) => /^family(-story|-page)?\./.test(key));
}

/** Sentences of a message; a label of a word or three is no sentence, and the formula is made for those. */
function gradedSentences(message: string): readonly string[] {
  return messageBranches(message)
    .flatMap(sentencesOf)
    .filter((sentence) => sentence.split(/\s+/).length > 3);
}

describe("the words that a family reads", () => {
  const messages = familyMessages();

  it("ask for at most six years of schooling, but for the exceptions by name", () => {
    expect(messages.length).toBeGreaterThan(200);
    const hard = messages.filter(([, message]) => gradedSentences(message).some((each) => readingGrade(each) > 6));
    expect(hard.map(([key]) => key).sort()).toEqual(Object.keys(HARDER).sort());
  });

  it("are graded as published: 0.39 words a sentence + 11.8 syllables a word − 15.59", () => {
    // 6 words, 6 syllables: 2.34 + 11.8 − 15.59.
    expect(readingGrade("The cat sat on the mat.")).toBeCloseTo(-1.45, 2);
    expect(readingGrade("Probability distributions.")).toBeGreaterThan(20);
    expect(readingGrade("It is 12 degrees.")).toBeCloseTo(0.39 * 4 + 11.8 * (5 / 4) - 15.59, 2);
  });

  it("are taken apart by all plurals and choices", () => {
    expect(messageBranches("{a, plural, one {# day} other {{b} days}}{c, select, yes {!} other {.}}")).toEqual([
      "4 day!",
      "4 day.",
      "May days!",
      "May days.",
    ]);
    expect(sentencesOf("One. Two? 3.5 is three.")).toEqual(["One.", "Two?", "3.5 is three."]);
  });
});
