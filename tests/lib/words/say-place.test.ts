import { expect, test } from "vitest";
import { PAIN_PLACES } from "@/lib/domain/student";
import { wordsFor } from "@/lib/words/catalogue";
import { sayPlace } from "@/lib/words/say-place";

test("a place of the list is said in its words, the family's own as they wrote it", () => {
  const words = wordsFor("en");
  for (const place of PAIN_PLACES) expect(sayPlace(words, place)).toBe(words.say(`happen.place.${place}`));
  expect([sayPlace(words, "hand"), sayPlace(words, "left shin")]).toEqual(["hand or thumb", "left shin"]);
  expect(sayPlace(words, "../x")).toBe("../x");
});
