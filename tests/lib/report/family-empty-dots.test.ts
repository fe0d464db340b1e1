import { expect, test } from "vitest";
import { familyEmptyDots } from "@/lib/report/family-empty-dots";
import type { ApartReason } from "@/lib/verdict/track-history";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const say = (aparts: readonly (ApartReason | null)[], reader: "young" | "other" = "other") =>
  familyEmptyDots(
    words,
    aparts.map((apart) => ({ apart })),
    reader,
  );
const camera = (why: "offset-too-large" | "too-near" | "unknown"): ApartReason => ({ kind: "camera", why, offBy: 42 });

test("each reason is said once with its number of dots, in the order in which they came", () => {
  expect(say([null, camera("offset-too-large"), null])).toEqual([
    "The empty dot doesn’t count: the phone was off to the side.",
  ]);
  expect(
    say([
      { kind: "before", begins: "2026-03-01" },
      camera("too-near"),
      { kind: "fingerprint", offBy: 4, view: "face-on" },
      camera("offset-too-large"),
      camera("unknown"),
    ]),
  ).toEqual([
    "The empty dot doesn’t count: it is from before you began anew.",
    "The empty dot doesn’t count: the phone was too near.",
    "2 empty dots don’t count: the phone was off to the side.",
    "The empty dot doesn’t count: the picture was not clear enough.",
  ]);
  expect(say([null])).toEqual([]);
});

test("what the coach wrote beside a video, and which aid it was, stays with the coach", () => {
  const said = say([
    { kind: "set-aside", reason: "father shouted" },
    { kind: "circumstance", circumstance: "aid-in-view", aid: "splint" },
    { kind: "circumstance", circumstance: "in-lesson", aid: null },
  ]);
  expect(said).toHaveLength(3);
  expect(said.join()).not.toMatch(/shouted|splint/);
});

test("to the youngest without a digit", () => {
  const said = say([camera("too-near"), camera("too-near")], "young").join();
  expect(said).toBe("Empty dots don’t count: the phone was too near.");
});
