import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { wordsFor } from "@/lib/words/catalogue";
import { pseudoMessage } from "@/lib/words/pseudo-message";

const FOLDER = path.join(import.meta.dirname, "../../../lib/words/messages/en");
const files = readdirSync(FOLDER).filter((name) => name.endsWith(".json"));
const all = files.map((name) =>
  Object.entries(JSON.parse(readFileSync(path.join(FOLDER, name), "utf8")) as Record<string, string>),
);

describe("the message catalogue", () => {
  it("no key is written in two files", () => {
    const keys = all.flatMap((entries) => entries.map(([key]) => key));
    expect(keys.filter((key, at) => keys.indexOf(key) !== at)).toEqual([]);
  });
  it("every message of every file is in the catalogue, and both languages can read its rules", () => {
    for (const locale of ["en", "en-XA"]) {
      const words = wordsFor(locale);
      for (const [key] of all.flat()) {
        expect(words.has(key)).toBe(true);
        try {
          words.say(key);
        } catch (error) {
          // A message with arguments names the one that it misses; any other error is a broken rule.
          expect(`${key}: ${String(error)}`).toMatch(/was not provided|not provided/i);
        }
      }
    }
  });
  it("every fundamental has its name, definition and sign", () => {
    const words = wordsFor("en");
    for (const { id } of BUILT_IN)
      for (const part of ["name", "definition", "plus"])
        expect(words.say(`fundamental.${id}.${part}`).length).toBeGreaterThan(3);
  });
  it("a message that nobody wrote throws with its key, whatever stands on the object's prototype", () => {
    expect(() => wordsFor("en").say("no.such.key")).toThrow("no.such.key");
    expect(wordsFor("en").has("constructor")).toBe(false);
  });
  it("the pseudo-language accents words and keeps arguments and plural rules", () => {
    expect(pseudoMessage("{n, plural, one {one film} other {# films}} of {name}")).toBe(
      "⟦{n, plural, one {óñé fílm} other {# fílms}} óf {name}⟧",
    );
    expect(wordsFor("en-XA").say("roster.settle.heading", { students: 2 })).toMatch(/^⟦2 .*⟧$/);
  });
  it("no message speaks of statistics as the trade doesn't: significant, outlier, p-value, score, grade", () => {
    for (const [key, message] of all.flat())
      expect(`${key} ${message}`).not.toMatch(/\b(significant|outlier|p-value|score|grade)\b/i);
  });
});
