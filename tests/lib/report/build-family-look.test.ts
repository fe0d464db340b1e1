import { expect, test } from "vitest";
import { buildFamilyLook } from "@/lib/report/build-family-look";
import type { LookSource } from "@/lib/report/family-look-source";
import { wordsFor } from "@/lib/words/catalogue";
import { filmed } from "./family-fixture";
import { lookTrack, type MadeVideo } from "./look-fixture";

const VIDEOS: readonly MadeVideo[] = [
  ["2026-03-03", 1],
  ["2026-06-03", 1],
];
const SOURCE: LookSource = {
  ...{ student: { alias: "Pip", birthYear: 2012, hand: "right" }, today: "2026-09-12", inHand: "foot-line" },
  tracks: ["trail-v", "foot-line", "hinge"].map((id) => lookTrack(id, VIDEOS)),
  ...{ videos: filmed("++"), numbers: [], plan: null, captures: [] },
};
const look = (over: Partial<LookSource>) => buildFamilyLook(wordsFor("en"), { ...SOURCE, ...over });

test("one picture, all else strips, the numbers of all, and how to film", () => {
  const { picture, strips, numbers, milestones, filming } = look({});
  expect(picture?.heading).toBe("Where your feet point");
  expect(strips?.rows).toHaveLength(2);
  expect(numbers?.items).toHaveLength(3);
  expect(milestones).toBeNull();
  expect(filming.cards).toHaveLength(1);
});

test("for the youngest at most two, no numbers, and no digit in what is told of what is measured", () => {
  const { picture, strips, numbers, milestones } = look({ student: { ...SOURCE.student, birthYear: 2019 } });
  expect(strips?.rows).toHaveLength(1);
  expect(picture?.heading).toBe("Where your feet point");
  expect(numbers).toBeNull();
  const { heading, summary, reads } = picture ?? { heading: "", summary: "", reads: [] };
  expect(JSON.stringify([heading, summary, reads, strips?.heading, strips?.lead, milestones])).not.toMatch(/\d/);
});

test("with nothing measured there is nothing to see, and still how to film", () => {
  const { picture, strips, numbers, milestones, filming } = look({ tracks: [], videos: [] });
  expect([picture, strips, numbers, milestones]).toEqual([null, null, null, null]);
  expect(filming.checks.items.length).toBeGreaterThan(2);
});

test("a track of which no video is on file is none", () => {
  expect(look({ tracks: [lookTrack("foot-line", [])] }).picture).toBeNull();
});
