import { beforeAll, describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import { fileTextOf, messageOf } from "@/lib/report/build-tell";
import { buildFamilyStory } from "@/lib/report/family-story";
import type { FamilyStory } from "@/lib/report/family-story-model";
import type { StorySource } from "@/lib/report/family-story-source";
import { MESSAGE_LETTERS } from "@/lib/report/tell-message";
import type { Telling } from "@/lib/report/tell-source";
import { wordsFor } from "@/lib/words/catalogue";
import { isForFamily } from "../words/family-keys";
import { sentencesOf } from "../words/reading-grade";
import { germanGrade } from "../words/reading-grade-german";
import { recordingWords } from "../words/recording-words";
import { BORN, BOTH, CAMERAS, EVENTS, PLATEAUS, PRACTICES, SAID, storySource, storyTrack, TODAY } from "./story-cases";

const { words, asked } = recordingWords(wordsFor("de"));
const own: Fundamental = { ...(BUILT_IN[0] as Fundamental), id: "own-tempo", ownName: "Tempo" };

/** What a plan that was followed left open, in turn. */
const FOLLOWED = [null, "smaller", "not-enough"] as const;

/** Years of school; a twelve-year-old is in the sixth or seventh. */
const YEARS = 7;

interface Case {
  readonly story: FamilyStory;
  readonly source: StorySource;
}

/** Every verdict × place × camera × practice × plateau, with ages, hands, events and fundamentals in turn. */
function* everyCase(): Generator<Case> {
  const fundamentals = [...BUILT_IN, own];
  const events = Object.values(EVENTS);
  let turn = 0;
  for (const verdict of Object.values(SAID))
    for (const position of ["inside", "edge", "outside"] as const)
      for (const camera of CAMERAS)
        for (const done of Object.values(PRACTICES))
          for (const plateau of PLATEAUS) {
            if (plateau !== null && verdict.change !== null) continue;
            turn++;
            const fundamental = fundamentals[turn % fundamentals.length] as Fundamental;
            const happened = events[turn % events.length] ?? [];
            const followed = verdict.verdict === "open" ? (FOLLOWED[turn % FOLLOWED.length] ?? null) : null;
            const begins = happened.some(({ rebaselines }) => rebaselines.length > 0) ? "2026-07-01" : null;
            const source = storySource({
              ...{
                student: {
                  alias: "Dot",
                  hand: BOTH[turn % 2] ?? "right",
                  birthYear: BORN[(turn >> 1) % BORN.length] ?? null,
                },
              },
              ...{
                videos: [
                  { day: "2026-08-02", use: "used" },
                  { day: "2026-09-05", use: "used" },
                ],
                events: happened,
                ...done,
              },
              drills: [
                { fundamentalId: fundamental.id, start: "2026-03-20", end: "2026-05-01" },
                { fundamentalId: fundamental.id, start: "2026-06-20", end: null },
              ],
              tracks: [storyTrack(fundamental, verdict, { position, camera, plateau, begins, followed })],
              openings: ["2026-06-10", "2026-09-10"],
            });
            yield { story: buildFamilyStory(words, source), source };
          }
}

const textsOf = ({ heading, good, changed, unsure, task, contact, rest, numbers }: FamilyStory): readonly string[] =>
  [heading, good, ...changed, unsure, task, contact, ...rest, ...numbers].filter((text) => text !== "");

describe("stories in German", () => {
  const cases: Case[] = [];
  beforeAll(() => {
    cases.push(...everyCase());
  });

  it("ask for no message but those that are written in German", () => {
    expect(cases.length).toBeGreaterThan(3000);
    expect(asked.size).toBeGreaterThan(100);
    expect([...asked].filter((key) => !isForFamily(key))).toEqual([]);
    expect([...asked]).toEqual(
      expect.arrayContaining([
        "family-story.doubted.better",
        "family-story.followed.smaller",
        "family-story.followed.not-enough",
      ]),
    );
  });

  it("hold no English word", () => {
    const english = /\b(the|your|is|are|were|we|on|video on|better|drill is|of|again|and)\b/;
    for (const { story } of cases)
      for (const text of textsOf({ ...story, task: story.task.replace(/20 slow ones|Feet on the rails/g, "") }))
        expect(text).not.toMatch(english);
  });

  it("begin each sentence with a capital and end none twice", () => {
    for (const { story } of cases)
      for (const text of textsOf(story)) {
        expect(text).not.toMatch(/\.\.|\s\s|\s[.,;:]|[a-zäöü]\. [a-zäöü]/u);
        expect(text).toMatch(/^[\p{Lu}\p{N}„]/u);
      }
  });

  it("read with ease: at most seven years of school a sentence", () => {
    const hard = new Set<string>();
    for (const { story } of cases)
      for (const sentence of [story.good, ...story.changed, story.unsure, ...story.rest].flatMap(sentencesOf))
        if (germanGrade([sentence]) > YEARS) hard.add(`${germanGrade([sentence]).toFixed(1)} ${sentence}`);
    expect([...hard].sort()).toEqual([]);
  });

  it("keep the message within its letters, and the file and the message in German", () => {
    for (const { story, source } of cases) {
      const telling = {
        ...{ student: { id: "s1", ...source.student }, today: TODAY, story, source, told: [], picture: null },
        ...{ taskLines: [words.say("family.task.missed")], stopped: "no" },
        filming: words.say("family-page.film.tip.move.down-the-line", {
          alias: "Dot",
          step: words.say("family-page.film.step.big", { steps: 2 }),
          side: words.say("family.hand.left"),
        }),
      } as unknown as Telling;
      const { text } = messageOf(words, telling);
      expect(text.length).toBeLessThanOrEqual(MESSAGE_LETTERS);
      expect(text).toContain("Tut etwas weh?");
      expect(fileTextOf(words, telling)).toContain("am Sa, 12. September 2026.");
    }
    expect([...asked].filter((key) => !isForFamily(key))).toEqual([]);
  });
});
