import { expect, test } from "vitest";
import { buildFamilyStrips } from "@/lib/report/build-family-strips";
import type { LookTrack } from "@/lib/report/family-look-source";
import { familyShown } from "@/lib/report/family-shown";
import { wordsFor } from "@/lib/words/catalogue";
import { lookTrack, type MadeVideo, withChange } from "./look-fixture";

const words = wordsFor("en");
const VIDEOS: readonly MadeVideo[] = [
  ["2026-03-03", 9],
  ["2026-06-03", 1],
];
const strips = (tracks: readonly LookTrack[], reader: "young" | "other" = "other") => {
  const all = familyShown([...tracks], { inHand: null, reader, today: "2026-07-01" });
  const shown = [...(all.pictured === null ? [] : [all.pictured]), ...all.strips];
  return buildFamilyStrips(words, shown, { hand: "left", reader, today: "2026-07-01" });
};
const moved = (says: "gain" | "slip", listed: boolean) =>
  withChange(says, ["2026-03-03", "2026-06-03"], [9, 1], listed);

test("each has one plain word, and says both to who can't see it", () => {
  const shown = strips([
    lookTrack("trail-v", VIDEOS, { verdict: "steady", ownedSince: "2026-04-01" }),
    lookTrack("foot-line", VIDEOS, moved("gain", true)),
    lookTrack("setup-tilt", VIDEOS, moved("slip", true)),
    lookTrack("hinge", VIDEOS, moved("gain", false)),
    lookTrack("hip-sway", VIDEOS),
    lookTrack("tilt-kept", VIDEOS, { verdict: "steady" }),
    lookTrack("top-tilt", VIDEOS, { ...moved("gain", true), moved: "within" }),
  ]);
  const words = Object.fromEntries((shown?.rows ?? []).map(({ of, word }) => [of, word]));
  expect(words).toEqual({
    "Your left-hand grip": "good",
    "The way your feet point": "better",
    "Your lean at the start": "not as good",
    "The bend of your wrists": "looks better, we check",
    "The way your hips move as the club goes back": "can’t tell yet",
    "Your lean as the club goes back": "the same",
    "Your lean at the top": "changed, still good",
  });
  expect(shown?.rows.map(({ strip }) => strip.summary)).toContain("The way your feet point: better.");
});

test("what was good when it was last seen, six weeks ago, isn't called good", () => {
  const owned = lookTrack("trail-v", [["2026-05-01", 50]], { verdict: "steady", ownedSince: "2026-04-01" });
  expect(strips([owned])?.rows[0]?.word).toBe("good when last seen");
});

test("a strip draws no change that isn't told", () => {
  const [listed, alone] = [true, false].map(
    (each) => strips([lookTrack("hinge", VIDEOS, moved("gain", each))])?.rows[0],
  );
  expect([listed?.strip.changes.length, alone?.strip.changes.length]).toEqual([1, 0]);
});

test("to the youngest it says that the strip isn't made for them; with nothing to show there is no part", () => {
  expect(strips([lookTrack("hinge", VIDEOS)], "young")?.lead).toBe(
    "The sandy strip is made for older players, not for your age.",
  );
  expect(strips([])).toBeNull();
});
