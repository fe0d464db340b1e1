import { expect, it } from "vitest";
import { buildFamilyFile, familyFileText } from "@/lib/report/build-family-file";
import { wordsFor } from "@/lib/words/catalogue";
import { madeTelling } from "./made-telling";

const words = wordsFor("en");

it("a file says what the story says, under headings of a family's words, and its title names nobody", () => {
  const telling = madeTelling();
  const file = buildFamilyFile(words, telling);
  expect(file.title).toBe("For the family");
  expect(file.parts.map(({ heading }) => heading)).toEqual(
    expect.arrayContaining(["What is good", "What changed", "The one task", "For the next video", "Take care"]),
  );
  const text = familyFileText(file);
  for (const said of [
    telling.story.heading,
    telling.story.good,
    ...telling.story.changed,
    telling.story.task,
    "Lay two sticks.",
  ])
    expect(text).toContain(said);
  expect(text).toContain("Made for Dot and family on Sat 12 Sep 2026.");
  expect(file.parts.every(({ lines }) => lines.length > 0 && lines.every((line) => line !== ""))).toBe(true);
});

it("numbers stand behind one step, or nowhere; the words of a picture are kept with the rest", () => {
  const telling = madeTelling();
  const bare = buildFamilyFile(words, { ...telling, story: { ...telling.story, numbers: [] } });
  expect(bare.numbers).toBeNull();
  const picture = {
    heading: "Feet",
    summary: "Straighter.",
    reads: ["A dot is a video."],
  } as unknown as typeof bare.picture;
  const drawn = familyFileText({ ...bare, picture });
  expect(drawn).toContain("Feet\nStraighter.\nA dot is a video.");
});
