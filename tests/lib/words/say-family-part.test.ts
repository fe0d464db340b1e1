import { expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { wordsFor } from "@/lib/words/catalogue";
import { sayFamilyPart } from "@/lib/words/say-family-part";

const words = wordsFor("en");

it("names the hand by left and right: the trail hand of a right-hander is the right one, of a left-hander the left one", () => {
  const grip = (id: "trail-v" | "lead-v", hand: "left" | "right") => sayFamilyPart(words, { id, ownName: null }, hand);
  expect([grip("trail-v", "right"), grip("trail-v", "left"), grip("lead-v", "right"), grip("lead-v", "left")]).toEqual([
    "the grip of your right hand",
    "the grip of your left hand",
    "the grip of your left hand",
    "the grip of your right hand",
  ]);
});

it("has words for every built-in fundamental, no two alike, and an academy’s own by its name", () => {
  const said = BUILT_IN.map((each) => sayFamilyPart(words, each, "right"));
  expect(new Set(said).size).toBe(BUILT_IN.length);
  for (const text of said) expect(text).toMatch(/^(how|where|the grip)/);
  expect(sayFamilyPart(words, { id: "own-wrist-cup", ownName: "Wrist cup" }, "left")).toBe("“Wrist cup”");
});
