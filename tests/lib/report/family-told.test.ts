import { expect, test } from "vitest";
import { familyTold } from "@/lib/report/family-told";
import { FAMILY_SOURCE } from "./family-fixture";

test("each sentence stands under its own mark, what can't be told under the open one, and nothing empty is there", () => {
  const story = { ...FAMILY_SOURCE.story, changed: ["Better.", "Back."], changedMarks: ["gain", "slip"] as const };
  expect(familyTold({ ...story, unsure: "Unsure.", contact: "Solid." })).toEqual([
    { glyph: "gain", line: "Better." },
    { glyph: "slip", line: "Back." },
    { glyph: "open", line: "Unsure." },
    { glyph: null, line: "Solid." },
  ]);
  expect(familyTold({ ...story, changed: [], changedMarks: [], unsure: "", contact: "" })).toEqual([]);
});
