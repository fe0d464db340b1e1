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
});
