import { describe, expect, it } from "vitest";
import { wordsFor } from "@/lib/words/catalogue";
import { sayMonth, sayOnDay } from "@/lib/words/day-words";
import family from "@/lib/words/messages/en/family.json";
import familyPage from "@/lib/words/messages/en/family-page.json";
import { capital, sayWhen } from "@/lib/words/say-family";

const words = wordsFor("en");
const TODAY = "2026-09-12";
/** Words that no family is told (SEASON.md 25), with their endings. */
const NEVER =
  /\b(film(s|ed|ing)?|levels?|bands?|settle[ds]?|square[dr]?|set-?ups?|prov(ed|en|es?)|sessions?|tracks?|verdicts?|evidence|significant|percentile|sway|tilt|hinge|trail|lead)\b/i;

describe("when", () => {
  it("the month of what is past, the day of what is of this month, the year where it is another one", () => {
    expect(["2026-03-28", "2026-09-02", "2025-11-02"].map((day) => sayWhen(words, day, TODAY))).toEqual([
      "in March",
      "on 2 September",
      "in November 2025",
    ]);
    expect(["2026-05-03", "2025-05-03"].map((day) => sayOnDay(words, day, TODAY))).toEqual(["3 May", "3 May 2025"]);
    expect(["2026-05-03", "2025-05-03"].map((day) => sayMonth(words, day, TODAY))).toEqual(["May", "May 2025"]);
    expect(capital("how you lean")).toBe("How you lean");
  });
});

describe("the words of a family’s page", () => {
  it("hold none that a family isn’t told", () => {
    // What the coach reads on the page of the links has the coach's words.
    const read = Object.entries({ ...family, ...familyPage }).filter(([key]) => /^family(-page)?\./.test(key));
    expect(read.length).toBeGreaterThan(90);
    const trade = read.filter(([, text]) => NEVER.test(text.replace(/\{[^{}]*\}/g, "")));
    expect(trade).toEqual([]);
  });

  it("that SEASON.md binds stand there letter by letter", () => {
    expect(family["family.dead.next"]).toBe(
      "We can’t show a page from here. Please open the link in your coach’s message again. If that doesn’t work, ask your coach for a new one.",
    );
    expect(family["family.pain.child"]).toBe("Does something hurt? Stop, and tell a grown-up today.");
    expect(family["family.pain.grown-ups"]).toBe(
      "Grown-ups: pain at night, numbness, pain down an arm or leg, or back pain that lasts more than a few days: no golf, and ask a doctor.",
    );
    expect(family["family.task.missed"]).toBe("Missed a day? That’s fine. Don’t do double tomorrow.");
    expect(words.say("family.ask.erase", { alias: "Dot" })).toBe("Ask us to delete Dot’s numbers");
    expect(words.say("family.about.until", { day: "30 September" })).toBe(
      "This page is open until 30 September. Your coach can make you a new one.",
    );
  });
});
