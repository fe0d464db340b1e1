import { expect, test } from "vitest";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { buildFamilyMilestones } from "@/lib/report/build-family-milestones";
import type { LookTrack } from "@/lib/report/family-look-source";
import { familyShown } from "@/lib/report/family-shown";
import { wordsFor } from "@/lib/words/catalogue";
import { lookTrack, withChange } from "./look-fixture";

const milestones = (...tracks: readonly LookTrack[]) => milestonesOn("2026-07-01", tracks);
const milestonesOn = (today: string, tracks: readonly LookTrack[]) => {
  const { pictured, strips } = familyShown(tracks, { inHand: null, reader: "other", today });
  const shown = [...(pictured === null ? [] : [pictured]), ...strips];
  return buildFamilyMilestones(wordsFor("en"), shown, { hand: "right", reader: "other", today })?.items ?? [];
};
const track = (id: string, over: Partial<TrackVerdict>) =>
  lookTrack(
    id,
    [
      ["2026-03-03", 1],
      ["2026-06-20", 1],
    ],
    over,
  );
const gain = (listed: boolean) => withChange("gain", ["2026-03-31", "2026-04-20"], [9, 1], listed);

test("better since and good since, in the order of days, each with its months", () => {
  expect(
    milestones(
      track("foot-line", { ...gain(true), ownedSince: "2026-06-02" }),
      track("trail-v", { verdict: "steady", ownedSince: "2026-03-30" }),
    ),
  ).toEqual([
    { when: "March", text: "Your right-hand grip has been good ever since." },
    { when: "March or April", text: "The way your feet point got better, and it has stayed better." },
    { when: "June", text: "The way your feet point has been good ever since." },
  ]);
});

test("only what is proved: no gain that isn't on the list, no slip, nothing under a first sign that it leaves", () => {
  const watch = { since: "2026-06-01" } as TrackVerdict["watch"];
  expect(
    milestones(
      track("foot-line", gain(false)),
      track("setup-tilt", { ...gain(false), ownedSince: "2026-06-02" }),
      track("hinge", withChange("slip", ["2026-03-31", "2026-04-20"], [1, 9], true)),
      track("trail-v", { verdict: "steady", ownedSince: "2026-03-30", watch }),
      track("hip-sway", {}),
    ),
  ).toEqual([]);
});

test("what nobody has seen for six weeks is told as it was, and not as lasting until now", () => {
  const tracks = [
    track("foot-line", { ...gain(true), ownedSince: "2026-06-02" }),
    track("trail-v", { verdict: "steady", ownedSince: "2026-03-30" }),
  ];
  expect(milestonesOn("2026-08-02", tracks)).toEqual([
    { when: "March or April", text: "The way your feet point got better." },
  ]);
});
