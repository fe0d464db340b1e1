import { expect, test } from "vitest";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { buildFamilyNumbers } from "@/lib/report/build-family-numbers";
import { familyShown } from "@/lib/report/family-shown";
import { wordsFor } from "@/lib/words/catalogue";
import { levelOf } from "../verdict/made-work";
import { ASIDE, lookTrack, withChange } from "./look-fixture";
import { plain } from "./made-season";

const words = wordsFor("en");
const numbers = (over: Partial<TrackVerdict>, today = "2026-04-01") => {
  const track = lookTrack(
    "foot-line",
    [
      ["2026-03-03", 9],
      ["2026-03-20", 1, ASIDE],
    ],
    over,
  );
  const shown = familyShown([track], { inHand: null, reader: "other", today });
  return buildFamilyNumbers(words, shown, { hand: "right", lines: ["A size."] });
};
const facts = (over: Partial<TrackVerdict>) =>
  Object.fromEntries((numbers(over)?.items[0]?.facts ?? []).map(({ name, value }) => [name, plain(value)]));

test("where it is with its doubt, the band, the share and how sure stand in the words of every page", () => {
  const share = { ...levelOf(0.7, 0.1) };
  const gain = withChange("gain", ["2026-03-03", "2026-06-03"], [9, 1], true);
  expect(
    facts({ ...gain, levelNow: levelOf(1.25, 1.1), bandShare: share, evidence: { noChange: 1 / 40 } as never }),
  ).toEqual({
    Now: "1.3 ± 1.1°",
    "Where we want it": "−3 to 4°",
    "Swings inside": "about 70 of 100, 60 to 80",
    "How sure": "about 1 in 40 that this is nothing",
  });
});

test("how sure says nothing of what isn't on the list, and of what stands still how small a change would be", () => {
  const alone = withChange("gain", ["2026-03-03", "2026-06-03"], [9, 1], false);
  expect(facts(alone)["How sure"]).toBe("we can’t tell yet");
  expect(facts({ verdict: "steady", smallestWorthwhile: 1.93 })["How sure"]).toBe("no change bigger than 2°");
  expect(facts({ levelNow: null })).toMatchObject({ Now: "not known yet", "Swings inside": "not known yet" });
});

test("the picture's videos stand one by one, and which doesn't count; the story's sizes come first", () => {
  const { lines, videos } = numbers({}) ?? {};
  expect(lines).toEqual(["A size."]);
  expect(videos?.heading).toBe("The way your feet point: each video");
  expect(videos?.lines.map((line) => plain(line).replace(/± [\d.]+/, "±"))).toEqual([
    "3 Mar 2026: 9 ±°",
    "20 Mar 2026: 1 ±°, doesn’t count",
  ]);
});

test("where it is after six weeks without a video is where it was on the last day", () => {
  const names = (today: string) => numbers({}, today)?.items[0]?.facts[0]?.name;
  // 3 March and 42 days: 14 April.
  expect([names("2026-04-14"), names("2026-04-15")]).toEqual(["Now", "On 3 Mar 2026"]);
});

test("with nothing measured there are none", () => {
  const shown = familyShown([], { inHand: null, reader: "other", today: "2026-07-01" });
  expect(buildFamilyNumbers(words, shown, { hand: "right", lines: [] })).toBeNull();
});
