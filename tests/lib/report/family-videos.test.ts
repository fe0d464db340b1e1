import { expect, test } from "vitest";
import { familyVideos } from "@/lib/report/family-videos";
import { wordsFor } from "@/lib/words/catalogue";
import { filmed } from "./family-fixture";

test.each([
  ["", ""],
  ["+++++++", "Your last seven videos were all good to use."],
  ["+-+", "2 of your 3 videos so far were good to use."],
  ["--", "You made 2 videos so far. Thank you for that."],
])("of videos %s it says: %s", (uses, said) => {
  const source = { student: { birthYear: 2012 }, today: "2026-09-12", videos: filmed(uses) };
  expect(familyVideos(wordsFor("en"), source)).toBe(said);
  const young = familyVideos(wordsFor("en"), { ...source, student: { birthYear: 2019 } });
  expect(young).toBe(uses.includes("+") ? "You made good videos." : "");
});
