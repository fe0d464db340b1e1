import { describe, expect, it } from "vitest";
import { german } from "@/lib/words/german";
import { messageBranches } from "./message-branches";
import { sentencesOf } from "./reading-grade";
import { germanGrade, germanSyllables } from "./reading-grade-german";

/** A twelve-year-old is in the sixth or seventh year of school. */
const YEARS = 7;

/** Words that ask for more, each with its reason. */
const HARDER: Readonly<Record<string, string>> = {
  "card.title.down-the-line.left": "a heading of four words; “linkshändig” is one of them",
  "card.title.down-the-line.right": "a heading of four words; “rechtshändig” is one of them",
  "card.title.face-on.left": "a heading of four words; “linkshändig” is one of them",
  "card.title.face-on.right": "a heading of four words; “rechtshändig” is one of them",
  "family.part.tilt-kept": "no sentence; with one it is graded among the stories",
  "family-story.part.tilt-kept": "no sentence; with one it is graded among the stories",
  "family.task.heading": "a heading; “Aufgabe” has three syllables",
  "family-story.task.do": "“Aufgabe” and “Video” are two of eight words",
};

describe("the German words that a family reads", () => {
  it("ask for at most seven years of schooling, but for the exceptions by name", () => {
    const family = Object.entries(german).filter(([key]) => /^(family|card|tell|letter|dose)/.test(key));
    expect(family.length).toBeGreaterThan(400);
    const hard = family.filter(([, message]) =>
      messageBranches(message)
        .flatMap(sentencesOf)
        .some((sentence) => sentence.split(/\s+/).length > 3 && germanGrade([sentence]) > YEARS),
    );
    expect(hard.map(([key]) => key).sort()).toEqual(Object.keys(HARDER).sort());
  });

  it("are graded as published", () => {
    // 4 words, each of one syllable: 0.1672 × 4 − 0.0327 × 100 − 0.875.
    expect(germanGrade(["Der Ball liegt gut."])).toBeCloseTo(-3.4762, 4);
    // One of 2 words has three syllables and more than six letters: 9.675 + 0.3344 + 6.485 − 1.635 − 0.875.
    expect(germanGrade(["Die Aufgabe."])).toBeCloseTo(13.9844, 4);
  });

  it("have their syllables counted by vowels that belong together", () => {
    const said = ["Füße", "Neigung", "Video", "Familie", "quer", "12", "heute", "zeigen"];
    // “Familie” is said with four; its “ie” is taken for one, as in “Linie”.
    expect(said.map(germanSyllables)).toEqual([2, 2, 3, 3, 1, 1, 2, 2]);
  });

  it("speak to a family as “ihr”: never “du”, never “Sie” within a sentence", () => {
    for (const [key, message] of Object.entries(german)) {
      expect(`${key} ${message}`).not.toMatch(/\b(du|dir|dich|deine?[mnrs]?|Ihnen|Ihre[mnrs]?)\b/u);
      expect(message).not.toMatch(/[a-zäöüß,] Sie\b/u);
    }
  });

  it("none of the words that SEASON.md 25 leaves out: film, level, session, track", () => {
    for (const [key, message] of Object.entries(german))
      if (/^(family|tell|letter)/.test(key))
        expect(`${key}: ${message}`).not.toMatch(/: .*\b(Film|Niveau|Sitzung|Spur)/u);
  });
});
