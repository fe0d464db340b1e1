import { describe, expect, it } from "vitest";
import { dayNumber } from "@/lib/domain/calendar-day";
import { buildFamilyPicture, type FamilyPictureSource } from "@/lib/report/build-family-picture";
import type { LookTrack } from "@/lib/report/family-look-source";
import { wordsFor } from "@/lib/words/catalogue";
import { levelOf } from "../verdict/made-work";
import { ASIDE, lookTrack, type MadeVideo, withChange } from "./look-fixture";

const words = wordsFor("en");
const SPRING: readonly MadeVideo[] = [
  ["2026-03-03", 9],
  ["2026-03-31", 10],
  ["2026-04-20", 1],
  ["2026-05-20", 2, ASIDE],
  ["2026-06-30", 1],
];
const GAIN = withChange("gain", ["2026-03-31", "2026-04-20"], [9.5, 1], true);
const picture = (track: LookTrack, over: Partial<FamilyPictureSource> = {}) =>
  buildFamilyPicture(words, { ...track, hand: "right", reader: "other", today: "2026-07-01", ...over });

describe("a family's picture", () => {
  it("bears its meaning in its heading and in its ends, by the student's own hand", () => {
    const of = (hand: "right" | "left") => {
      const { heading, high, low, inside, reads } = picture(lookTrack("foot-line", SPRING), { hand });
      return [heading, high, low, inside, reads[0]];
    };
    expect(of("right")).toEqual([
      ...["Where your feet point", "too far right", "too far left", "good"],
      "The sandy strip is where we want your feet. High up means they point too far right.",
    ]);
    expect(of("left").slice(1, 3)).toEqual(["too far left", "too far right"]);
  });

  it("draws a change as the stretch of its days, with a level and a word for each side of it", () => {
    const { changes, levels, reads } = picture(lookTrack("foot-line", SPRING, GAIN));
    expect(changes.map(({ from, to, direction, label, daysLabel }) => [from, to, direction, label, daysLabel])).toEqual(
      [[dayNumber("2026-03-31"), dayNumber("2026-04-20"), "toward", "better", "31 Mar – 20 Apr"]],
    );
    expect(levels.map(({ label, value }) => [label, value])).toEqual([
      ["March", 9.5],
      ["now", 1],
    ]);
    expect(reads.slice(1)).toEqual([
      "Each dot is one video; the line through it shows how wrong one video can be.",
      "The thick line is all of them together.",
      "The striped days are when it changed.",
      "The empty dot doesn’t count: the phone was off to the side.",
    ]);
  });

  it("draws nothing of a change that doesn't stand on the list, nor a level that it runs through", () => {
    const alone = withChange("gain", ["2026-03-31", "2026-04-20"], [9.5, 1], false);
    const { changes, levels, summary } = picture(lookTrack("foot-line", SPRING, alone));
    expect([changes, levels]).toEqual([[], []]);
    expect(summary).not.toMatch(/better|worse|different/);
  });

  it("after a listed change keeps it, and ends its levels where one begins that nobody is told", () => {
    const [first] = GAIN.changes ?? [];
    const [second] = withChange("slip", ["2026-05-20", "2026-06-30"], [1, 8], false).changes ?? [];
    const verdict = {
      ...{ verdict: "slip", listed: false, change: second, changes: [first, second], levelNow: levelOf(8) },
      looks: [{ date: "2026-04-20", verdict: "gain", listed: true }],
    } as never;
    const { changes, levels } = picture(lookTrack("foot-line", SPRING, verdict));
    expect(changes.map(({ direction }) => direction)).toEqual(["toward"]);
    expect(levels.map(({ value }) => value)).toEqual([9.5]);
  });

  it("has no line for what isn't settled, and one for what is the same", () => {
    expect(picture(lookTrack("foot-line", SPRING)).levels).toEqual([]);
    const steady = picture(lookTrack("foot-line", SPRING, { verdict: "steady" }));
    expect(steady.levels.map(({ value, label }) => [value, label])).toEqual([[1, "now"]]);
  });

  it("after six weeks without a video calls nothing now", () => {
    const labels = (today: string) =>
      picture(lookTrack("foot-line", SPRING, GAIN), { today }).levels.map(({ label }) => label);
    expect(labels("2026-08-11")).toEqual(["March", "now"]);
    expect(labels("2026-08-12")).toEqual(["March", "April to June"]);
  });

  it("a video that doesn't count is an empty dot, whatever the reason", () => {
    const aided: MadeVideo = ["2026-07-01", 1, { kind: "circumstance", circumstance: "aid-in-view", aid: null }];
    const { sessions, reads } = picture(lookTrack("foot-line", [...SPRING, aided]));
    expect(sessions.map(({ mark }) => mark)).toEqual(["used", "used", "used", "set-aside", "used", "set-aside"]);
    expect(reads.filter((line) => line.includes("empty dot"))).toHaveLength(2);
  });

  it("names no end that the strip doesn't have, and no strip where there is no goal", () => {
    expect(picture(lookTrack("top-tilt", SPRING))).toMatchObject({ high: "", low: "too little lean", inside: "good" });
    const track = lookTrack("foot-line", SPRING);
    const goal = { ...track.history.goal, low: null, high: null };
    const bare = picture({ ...track, history: { ...track.history, goal, goals: [] } });
    expect([bare.high, bare.low, bare.inside]).toEqual(["", "", ""]);
    expect(bare.reads[0]).toContain("no sandy strip yet");
  });

  it("bears no unit and no value; for the youngest no digit, and a strip that isn't made for them", () => {
    const said = (reader: "young" | "other") => {
      const { heading, summary, reads, levels, changes, bands } = picture(lookTrack("foot-line", SPRING, GAIN), {
        reader,
      });
      return JSON.stringify([heading, summary, reads, levels, changes, bands].map(labels));
    };
    expect(said("other")).not.toMatch(/°|deg|%/);
    expect(said("young")).not.toMatch(/\d/);
    expect(picture(lookTrack("foot-line", SPRING, GAIN), { reader: "young" }).changes[0]?.daysLabel).toBe(
      "March or April",
    );
    expect(said("young")).toContain("not for your age");
    const old = lookTrack("foot-line", [["2024-11-03", 9], ...SPRING]);
    const months = (reader: "young" | "other") => picture(old, { reader }).x.ticks.map(({ label }) => label);
    expect(months("other").join()).toMatch(/2025/);
    expect(months("young").join()).not.toMatch(/\d/);
  });

  it("where no video counts is empty dots alone, and says why", () => {
    const none = picture(
      lookTrack(
        "foot-line",
        [
          ["2026-03-03", 9, ASIDE],
          ["2026-04-03", 9, ASIDE],
        ],
        { levelNow: null },
      ),
    );
    expect(none.sessions.map(({ mark }) => mark)).toEqual(["set-aside", "set-aside"]);
    expect([none.levels, none.changes]).toEqual([[], []]);
    expect(none.reads.at(-1)).toBe("2 empty dots don’t count: the phone was off to the side.");
    expect(none.summary).toBe("Where your feet point. 2 videos, 3 Mar – 3 Apr.");
  });

  it("is a dot where there is one video, and nothing breaks", () => {
    const one = picture(lookTrack("foot-line", [["2026-03-03", 9]]));
    expect(one.sessions).toHaveLength(1);
    expect(one.x.to).toBeGreaterThan(one.x.from);
  });
});

/** What of a part is read: its texts alone. */
function labels(part: unknown): unknown {
  if (typeof part === "string") return part;
  if (typeof part !== "object" || part === null) return null;
  return Object.values(part).map(labels);
}
