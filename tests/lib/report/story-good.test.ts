import { describe, expect, it } from "vitest";
import { buildFamilyStory } from "@/lib/report/family-story";
import type { StorySource } from "@/lib/report/family-story-source";
import { wordsFor } from "@/lib/words/catalogue";
import { feet, PRACTICES, storySource } from "./story-cases";

const words = wordsFor("en");
const story = (over: Partial<StorySource>) => buildFamilyStory(words, storySource(over));
const video = (day: string, use: "used" | "apart" = "used") => ({ day, use });

describe("one true good thing", () => {
  it("is practice as it was asked for before videos, and no praise for more than that", () => {
    const done = (name: string) => story({ ...PRACTICES[name], videos: [video("2026-09-05")] }).good;
    expect(done("asked")).toBe("You practised on 5 of the last 7 days, just as we asked. Rest days are part of it.");
    expect(done("every")).toBe("You practised on all of the last 3 days, just as we asked.");
    expect(done("less")).toBe("You practised on one of the last 7 days.");
    expect(done("more")).toBe("You practised on 7 of the last 7 days. Rest days are good too.");
    expect(done("none")).toBe("Your last video was good to use.");
    expect(done("hurts")).toBe("You told us that something hurts. That was the right thing to do.");
  });

  it("counts videos in a row, and says that nothing is on file yet only where nothing is", () => {
    const many = Array.from({ length: 7 }, (_, at) => video(`2026-08-0${at + 1}`));
    expect(story({ videos: many }).good).toBe("Your last seven videos were all good to use.");
    expect(story({ videos: [video("2026-08-01"), video("2026-08-02", "apart")] }).good).toBe(
      "1 of your 2 videos so far was good to use.",
    );
    expect(story({ videos: [video("2026-08-02", "apart")] }).good).toBe(
      "You made one video so far. Thank you for that.",
    );
    expect(story({}).good).toBe("There is nothing to tell yet. It begins with the first video.");
    expect(story({}).heading).toBe("Dot’s page starts with the first video");
  });

  it("leads the page where nothing changed and nothing is held", () => {
    const shown = story({ ...PRACTICES.asked, tracks: [feet("open, no plan")], videos: [video("2026-09-05")] });
    expect(shown.heading).toBe("Dot practised on 5 of 7 days, just as asked");
  });
});
