import { expect, test } from "vitest";
import { buildFamilyPicture } from "@/lib/report/build-family-picture";
import { sayFamilyPicture } from "@/lib/report/family-picture-said";
import { wordsFor } from "@/lib/words/catalogue";
import { ASIDE, lookTrack, withChange } from "./look-fixture";

const words = wordsFor("en");
const track = lookTrack(
  "foot-line",
  [
    ["2026-03-03", 9],
    ["2026-03-31", 10],
    ["2026-04-20", 1],
    ["2026-05-20", 2, ASIDE],
    ["2026-06-30", 1],
  ],
  withChange("gain", ["2026-03-31", "2026-04-20"], [9.5, 1], true),
);
const picture = (reader: "young" | "other") =>
  buildFamilyPicture(words, { ...track, hand: "right", reader, today: "2026-07-01" });

test("who can't see the picture hears its videos, its levels against the strip and its changes in the order of days", () => {
  expect(picture("other").summary).toBe(
    "Where your feet point. 5 videos, 3 Mar – 30 Jun. 2 dots lie in the strip, of 4 that count. March: too far right. Some time in 31 Mar – 20 Apr: it got better. Now: in the strip.",
  );
});

test("the youngest hear no number", () => {
  expect(picture("young").summary).toBe(
    "Where your feet point. March: too far right. March or April: it got better. Now: in the strip.",
  );
});

test("a level across an edge is on the edge, and without a strip nothing is compared", () => {
  const { summary: _said, ...rest } = picture("other");
  const levels = rest.levels.map((level) => ({ ...level, low: 3, high: 5 }));
  expect(sayFamilyPicture(words, { ...rest, levels }, { reader: "other", today: "2026-07-01" })).toContain(
    "Now: on the edge of the strip.",
  );
  expect(
    sayFamilyPicture(words, { ...rest, bands: [], inside: "" }, { reader: "other", today: "2026-07-01" }),
  ).toContain("Now: no strip to compare with.");
});
