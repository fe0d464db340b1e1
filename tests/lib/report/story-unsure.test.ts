import { describe, expect, it } from "vitest";
import { buildFamilyStory } from "@/lib/report/family-story";
import type { StorySource } from "@/lib/report/family-story-source";
import { wordsFor } from "@/lib/words/catalogue";
import { EVENTS, feet, fundamentalOf, grip, hips, saidOf, storySource, storyTrack, TASK } from "./story-cases";

const words = wordsFor("en");
const story = (over: Partial<StorySource>) => buildFamilyStory(words, storySource(over));

describe("what can't be told yet", () => {
  it("is that of the drill in hand, else the one nearest to being told; the rest is counted", () => {
    const tracks = [grip("open, five more videos"), hips("open, one more video"), feet("open, no plan")];
    const free = story({ tracks });
    expect(free.unsure).toBe(
      "We can’t tell yet about the way your hips move as the club goes back. One more video will probably show it. If it is smaller than it looks, it may not.",
    );
    expect(free.rest).toEqual(["There are two more things that we can’t tell yet."]);
    expect(story({ tracks, task: { ...TASK, week: null } }).unsure).toBe(
      "We can’t tell yet about the way your feet point. More videos may not show it this year.",
    );
  });

  it("names what is being checked, and what was good when it was last seen, beside the count of the rest", () => {
    const tracks = [
      feet("open, one more video"),
      grip("better, alone"),
      hips("worse, alone"),
      storyTrack(fundamentalOf("hinge"), saidOf("steady and owned"), { camera: "none lately" }),
      storyTrack(fundamentalOf("top-tilt"), saidOf("open, no plan")),
    ];
    const shown = story({ tracks });
    expect(shown.unsure).toBe("Your right-hand grip looks better; we are checking.");
    expect(shown.rest).toEqual([
      "The way your hips move as the club goes back looks different; we are checking.",
      "The bend of your wrists was good on 20 July. The next video will show if it still is.",
      "There are two more things that we can’t tell yet.",
    ]);
  });

  it("says what stands against it: the phone, another reader, a new beginning", () => {
    const one = (name: string, over = {}, events: StorySource["events"] = []) =>
      story({ tracks: [feet(name, over)], events }).unsure;
    expect(one("open, the phone moved")).toContain("The phone stood in a new place, and that can look like a change.");
    expect(one("open, another reader")).toContain("Someone else looked at the videos");
    expect(one("open, first videos")).toContain("We need three more videos first.");
    expect(one("open, no plan", { camera: "last left out" })).toContain("The last video doesn’t count: the phone");
    expect(one("open, first videos", { begins: "2026-07-01" }, EVENTS["new clubs"])).toContain(
      "You have new clubs, so we start to look anew.",
    );
  });

  it("says what the videos of a plan that was followed leave: smaller than it looked, or still not enough", () => {
    const leaving = (followed: "smaller" | "not-enough") =>
      story({ tracks: [feet("open, one more video", { followed })] }).unsure;
    expect(leaving("smaller")).toBe(
      "We can’t tell yet about the way your feet point. You sent the videos we asked for. If there is a change, it is less than it looked. One more video will probably show it. If it is smaller than it looks, it may not.",
    );
    expect(leaving("not-enough")).toContain("You sent the videos we asked for. They were not enough to tell. One more");
  });

  it("what was told for sure and is less sure now is said so once, ahead of everything but what changed", () => {
    const openings = ["2026-06-10"];
    const doubted = story({ tracks: [feet("better, doubtful since it was read"), hips("steady and owned")], openings });
    expect(doubted.heading).toBe("We are less sure now about the way Dot’s feet point");
    expect(doubted.changed).toEqual([
      "On 10 June we said that the way your feet point was better. The videos since then make us less sure. We are checking.",
    ]);
    expect(doubted.unsure).toBe("");
    const unread = story({ tracks: [feet("better, doubtful since it was read")] });
    expect(unread.changed).toEqual(["So far nothing has changed that we can be sure of."]);
    expect(unread.unsure).toContain("looks better; we are checking");
  });
});
