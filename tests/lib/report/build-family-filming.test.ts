import { describe, expect, it } from "vitest";
import { NOTHING_SEEN } from "@/lib/domain/session";
import { buildFamilyFilming } from "@/lib/report/build-family-filming";
import { buildFilmingCard } from "@/lib/report/build-filming-card";
import type { LookSource } from "@/lib/report/family-look-source";
import { wordsFor } from "@/lib/words/catalogue";
import { filmed } from "./family-fixture";
import { lookTrack } from "./look-fixture";

const words = wordsFor("en");
const SOURCE: LookSource = {
  ...{ student: { alias: "Eli", birthYear: 2012, hand: "left" }, today: "2026-09-12", tracks: [], inHand: null },
  ...{ videos: [], numbers: [], plan: null, captures: [] },
};
const filming = (over: Partial<LookSource>) => buildFamilyFilming(words, { ...SOURCE, ...over });
const BESIDE = {
  ...({ view: "down-the-line", squareness: "unknown", offBy: null } as const),
  seen: { ...NOTHING_SEEN, besideHandsCm: 42, distanceCm: 400 },
};
const PLAN = {
  dueOn: "2026-09-22",
  body: { fundamentals: [{ id: "foot-line", swings: 5 }], views: ["down-the-line" as const], care: [] },
};

describe("how the next video is made", () => {
  it("follows what the family was told: its day, view and swings, on the card of the student's hand", () => {
    const { heading, swings, cards } = filming({ plan: PLAN });
    expect([heading, swings]).toEqual(["Next video, by Tue 22 Sep: from behind", "5 swings, then stop."]);
    const card = buildFilmingCard(words, "down-the-line", "left");
    expect(cards.map(({ steps, plan }) => [steps, plan])).toEqual([[card.place.steps, card.place.plan.drawing]]);
    expect(cards[0]?.pictures).toEqual(card.picture.figures);
  });

  it("a day that has passed is left out, and a plan that can't be read here tells only its day", () => {
    expect(filming({ plan: { ...PLAN, dueOn: "2026-09-11" } }).heading).toBe("Next video: from behind");
    expect(filming({ plan: { ...PLAN, body: null } })).toMatchObject({
      ...{ heading: "Next video, by Tue 22 Sep: from the front", swings: "" },
    });
  });

  it("without a plan takes the view of what is in hand, else of the last video, else the first of all", () => {
    const tracks = [lookTrack("foot-line", [["2026-03-03", 1]])];
    expect(filming({ tracks, inHand: "foot-line" }).heading).toBe("Next video: from behind");
    expect(filming({ captures: [BESIDE] }).heading).toBe("Next video: from behind");
    expect(filming({}).heading).toBe("Next video: from the front");
  });

  it("praises what was counted, then gives one tip from the last video of that view", () => {
    const videos = filmed("+++++++");
    expect(filming({ videos, captures: [BESIDE] }).tip).toBe(
      "Your last seven videos were all good to use. One tip: keep the phone behind the hands, not to the side. Next time, standing behind Eli, put it one short step to your right.",
    );
    const square = { ...BESIDE, squareness: "square" as const, seen: NOTHING_SEEN };
    expect(filming({ videos, captures: [square] }).tip).toBe(
      "Your last seven videos were all good to use. Do it just like that again.",
    );
    expect(filming({ videos: filmed("+-"), captures: [square] }).tip).toBe(
      "1 of your 2 videos so far was good to use.",
    );
    expect(
      filming({ videos, plan: { ...PLAN, body: { ...PLAN.body, views: ["face-on"] } }, captures: [BESIDE] }).tip,
    ).toBe("Your last seven videos were all good to use. Do it just like that again.");
    expect(filming({ captures: [BESIDE] }).tip).toBe("");
  });

  it("thanks the youngest whose videos can't be used", () => {
    const young = { ...SOURCE.student, birthYear: 2019 };
    expect(filming({ student: young, videos: filmed("-"), captures: [BESIDE] }).tip).toMatch(
      /^Thank you for the last video\. One tip: /,
    );
  });

  it("of two views has both cards, and each thing to look at once", () => {
    const both = filming({ plan: { ...PLAN, body: { ...PLAN.body, views: ["face-on", "down-the-line"] } } });
    expect(both.heading).toBe("Next video, by Tue 22 Sep: from the front and from behind");
    expect(both.cards).toHaveLength(2);
    expect(new Set(both.checks.items).size).toBe(both.checks.items.length);
    expect(both.checks.items).toContain("Nobody moved the phone.");
  });
});
