import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { HANDS } from "@/lib/domain/handedness";
import { wordsFor } from "@/lib/words/catalogue";
import { sayFamilySide } from "@/lib/words/say-family-side";

const words = wordsFor("en");
const WHAT = ["high", "low", "read"] as const;
const by = (id: string) => BUILT_IN.find((each) => each.id === id) ?? { id: "own-x" as const, ownName: "X" };

describe("the ends of a family's picture", () => {
  it("have words for every fundamental, hand and end, and one of the academy's own", () => {
    for (const fundamental of [...BUILT_IN, { id: "own-x" as const, ownName: "X" }])
      for (const hand of HANDS)
        for (const what of WHAT) expect(sayFamilySide(words, fundamental, hand, what)).toMatch(/^[a-zA-Z ,:’.]+$/);
  });

  it("take left and right from the student's hand: plus of the feet is closed, a right-hander's right", () => {
    expect(HANDS.map((hand) => sayFamilySide(words, by("foot-line"), hand, "high"))).toEqual([
      "too far right",
      "too far left",
    ]);
    expect(HANDS.map((hand) => sayFamilySide(words, by("foot-line"), hand, "low"))).toEqual([
      "too far left",
      "too far right",
    ]);
  });

  it("mirror every word of a side, and no other", () => {
    const swap = (text: string) => text.replace(/\b(?:left|right)\b/g, (side) => (side === "left" ? "right" : "left"));
    for (const fundamental of BUILT_IN)
      for (const what of WHAT)
        expect(sayFamilySide(words, fundamental, "left", what)).toBe(
          swap(sayFamilySide(words, fundamental, "right", what)),
        );
  });

  it("read a fundamental's strip in its own words", () => {
    expect(sayFamilySide(words, by("foot-line"), "right", "read")).toBe(
      "The sandy strip is where we want your feet. High up means they point too far right.",
    );
    expect(sayFamilySide(words, by("own-x"), "right", "read")).toBe("The sandy strip is where we want it.");
  });
});
