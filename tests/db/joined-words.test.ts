import fc from "fast-check";
import { expect, test } from "vitest";
import { joinWords, splitWords } from "@/db/joined-words";

test("joined words come back as they were; no words are no words, not one empty one", () => {
  expect(splitWords(joinWords([]))).toEqual([]);
  const word = fc.string({ minLength: 1 }).filter((text) => !text.includes(","));
  fc.assert(
    fc.property(fc.array(word), (words) => {
      expect(splitWords(joinWords(words))).toEqual(words);
    }),
  );
});

test("a word with the separator, or empty, is refused by its text", () => {
  expect(() => joinWords(["wind", "rain, cold"])).toThrow('"rain, cold"');
  expect(() => joinWords([""])).toThrow('""');
});
