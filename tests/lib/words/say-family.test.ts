import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { HANDS } from "@/lib/domain/handedness";
import { wordsFor } from "@/lib/words/catalogue";
import family from "@/lib/words/messages/en/family.json";
import familyPage from "@/lib/words/messages/en/family-page.json";
import { type FamilyFinding, sayFamily } from "@/lib/words/say-family";
import { sayFamilyPart } from "@/lib/words/say-family-part";

const words = wordsFor("en");
const TODAY = "2026-09-12";
/** Words that no family is told (SEASON.md 25), with their endings. */
const NEVER =
  /\b(film(s|ed|ing)?|levels?|bands?|settle[ds]?|square[dr]?|set-?ups?|prov(ed|en|es?)|sessions?|tracks?|verdicts?|evidence|significant|percentile|sway|tilt|hinge|trail|lead)\b/i;

const FINDINGS: readonly FamilyFinding[] = [
  { kind: "better", before: "2026-03-28" },
  { kind: "better", before: "2026-09-02" },
  { kind: "better", before: "2025-11-02" },
  { kind: "worse", before: "2026-04-28" },
  { kind: "within" },
  { kind: "through" },
  { kind: "elsewhere" },
  { kind: "good", weeks: 16 },
  { kind: "good", weeks: 1 },
  { kind: "good", weeks: 0 },
  { kind: "same", videos: 12 },
  { kind: "same", videos: 1 },
  { kind: "checking-better" },
  { kind: "checking" },
  { kind: "corrected", said: "better", on: "2026-05-03" },
  { kind: "corrected", said: "worse", on: "2025-05-03" },
  { kind: "open", videos: 2 },
  { kind: "open", videos: 1 },
  { kind: "open", videos: null },
];

const say = (finding: FamilyFinding, reader: "young" | "other") =>
  sayFamily(words, finding, { of: "how you lean at the top", reader, today: TODAY });

describe("sayFamily", () => {
  it.each([
    [FINDINGS[0], "How you lean at the top is better than in March, and it has stayed better."],
    [FINDINGS[1], "How you lean at the top is better than on 2 September, and it has stayed better."],
    [FINDINGS[2], "How you lean at the top is better than in November 2025, and it has stayed better."],
    [FINDINGS[3], "How you lean at the top is not as good as in April. That happens, and we work on it."],
    [FINDINGS[4], "How you lean at the top has changed, and it is still good."],
    [FINDINGS[7], "How you lean at the top is still good: 16 weeks now."],
    [FINDINGS[8], "How you lean at the top is still good: one week now."],
    [FINDINGS[9], "How you lean at the top is still good."],
    [FINDINGS[10], "How you lean at the top is still the same. We checked it on 12 videos."],
    [FINDINGS[12], "How you lean at the top looks better; we are checking."],
    [
      FINDINGS[14],
      "On 3 May this page said that how you lean at the top was better. The videos since then don’t show it, so we take that back.",
    ],
    [
      FINDINGS[15],
      "On 3 May 2025 this page said that how you lean at the top was not as good any more. The videos since then don’t show it, so we take that back.",
    ],
    [
      FINDINGS[16],
      "We can’t tell yet about how you lean at the top. 2 more videos on different days will probably show it, if it has changed as much as it seems.",
    ],
    [FINDINGS[18], "We can’t tell yet about how you lean at the top."],
  ])("%o reads: %s", (finding, sentence) => {
    if (!finding) throw new Error("no such finding");
    expect(say(finding, "other")).toBe(sentence);
  });

  it("every finding, every fundamental, both hands and both ages: whole sentences without a word of the trade", () => {
    let said = 0;
    for (const finding of FINDINGS)
      for (const { id, ownName } of BUILT_IN)
        for (const hand of HANDS)
          for (const reader of ["young", "other"] as const) {
            const of = sayFamilyPart(words, { id, ownName }, hand);
            const text = sayFamily(words, finding, { of, reader, today: TODAY });
            if (text === "") continue;
            expect(text).toMatch(/^[A-Z].*\.$/);
            expect(text).not.toMatch(NEVER);
            expect(text).not.toMatch(/[{}]|undefined|NaN/);
            said++;
          }
    expect(said).toBeGreaterThan(FINDINGS.length * BUILT_IN.length * 2);
  });

  it("the youngest are told no number and no slip", () => {
    const told = FINDINGS.map((finding) => say(finding, "young")).filter((text) => text !== "");
    expect(told.length).toBeGreaterThan(4);
    for (const text of told) expect(text).not.toMatch(/\d|not as good|That happens|one week/);
    for (const kind of ["worse", "through"] as const)
      expect(say(kind === "worse" ? { kind, before: "2026-04-28" } : { kind }, "young")).toBe("");
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
