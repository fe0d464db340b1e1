import { describe, expect, it } from "vitest";
import type { Session } from "@/lib/domain/session";
import { buildFamilyStory } from "@/lib/report/family-story";
import type { StorySource } from "@/lib/report/family-story-source";
import { wordsFor } from "@/lib/words/catalogue";
import { grip, storySource } from "./story-cases";

const words = wordsFor("en");
const story = (over: Partial<StorySource>) => buildFamilyStory(words, storySource(over));

describe("contact", () => {
  const count = (day: string, solid: number, balls: number) =>
    ({ day, solid, balls, clubGroup: "iron", setAsideReason: null, circumstance: "unaided" }) as unknown as Session;
  const contact = (sessions: readonly Session[]) => ({ sessions, clubGroup: "iron", seasonStart: "2026-01-01" });

  it("is solid of those that were counted, or that they are too few; without a count nothing", () => {
    expect(story({ contact: contact([]) }).contact).toBe("");
    expect(story({ contact: contact([count("2026-09-05", 8, 20)]) }).contact).toBe(
      "You hit 8 of 20 balls well. That is too few to tell more.",
    );
    expect(story({ contact: contact([count("2026-08-05", 12, 20), count("2026-09-05", 8, 20)]) }).contact).toBe(
      "You hit 20 of your last 40 balls well. We can’t tell yet if that has changed.",
    );
  });

  it("that rose by its own counts only looks like more, beside what got better at about that time, and no score is promised", () => {
    const days = Array.from(
      { length: 16 },
      (_, at) => `2026-0${5 + Math.floor(at / 4)}-${["03", "10", "17", "24"][at % 4]}`,
    );
    const risen = contact(days.map((day, at) => count(day, at < 8 ? 4 : 17, 20)));
    expect(story({ contact: risen }).contact).toMatch(/well\. That looks like more than before; we are checking\.$/);
    const withWork = story({ contact: risen, tracks: [grip("better, listed")] }).contact;
    expect(withWork).toMatch(
      /more than before; we are checking\. It was at about the time when your right-hand grip got better\.$/,
    );
    const young = { alias: "Dot", hand: "right", birthYear: 2019 } as const;
    expect(story({ contact: risen, student: young }).contact).toBe(
      "It looks like you hit more balls well; we are checking.",
    );
    expect(story({ contact: contact([count("2026-09-05", 8, 20)]), student: young }).contact).toBe("");
  });
});
