import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { FAMILY_THRESHOLDS } from "@/lib/verdict/family-thresholds";
import type { Words } from "@/lib/words/catalogue";
import type { StorySource } from "./family-story-source";
import { familyVideos } from "./family-videos";
import type { StoryFinding } from "./story-findings";
import { type StoryTelling, sayStoryTold } from "./story-sentences";

/** Days with practice among those that the page shows. */
function daysPractised({ practice, today }: StorySource): number {
  const first = dayFromNumber(dayNumber(today) - FAMILY_THRESHOLDS.logDays.value + 1);
  const done = practice.filter(({ minutes, balls }) => minutes !== null || balls !== null);
  return new Set(done.flatMap(({ day }) => (day >= first && day <= today ? [day] : []))).size;
}

/** Whether the drill was practised on as many days as were asked for: more are no praise, because rest days are asked for too. */
export function practisedAsAsked({ task }: Pick<StorySource, "task">): {
  readonly practised: number;
  readonly days: number;
} | null {
  const week = task?.week ?? null;
  if (week === null || week.asked === null || week.asked === 0 || week.practised !== week.asked) return null;
  return { practised: week.practised, days: week.days - week.stoppedDays };
}

function sayAsked(words: Words, source: StorySource): string[] {
  const asked = practisedAsAsked(source);
  if (asked === null || asked.days < 2) return [];
  return [words.say(`family-story.good.${asked.practised === asked.days ? "every" : "asked"}`, asked)];
}

function sayPractised(words: Words, source: StorySource): string[] {
  const practised = daysPractised(source);
  const asked = source.task?.week?.asked ?? null;
  if (practised === 0) return [];
  // More than was asked for is counted, and no praise: rest days were asked for too.
  return asked !== null && practised > asked
    ? [words.say("family-story.good.more", { practised, days: FAMILY_THRESHOLDS.logDays.value })]
    : [words.say("family.good.practised", { days: practised })];
}

/** The last videos in a row that were good to use. */
function streakOf({ videos }: StorySource): number {
  return videos.length - 1 - videos.findLastIndex(({ use }) => use === "apart");
}

/**
 * Every good thing that was done and counted, the one to begin with first (SEASON.md 23): telling about pain, practice as it was
 * asked for, many usable videos in a row, things held and for how long; then what is less.
 */
export function storyGood(words: Words, held: readonly StoryFinding[], telling: StoryTelling): readonly string[] {
  const { source } = telling;
  const hurts = source.practice.some(({ pain }) => pain !== null) ? [words.say("family.good.told")] : [];
  const still = held.map((found) => sayStoryTold(words, found, telling));
  const said = familyVideos(words, source);
  const videos = said === "" ? [] : [said];
  if (telling.reader === "young") {
    return [
      ...hurts,
      ...(daysPractised(source) > 0 ? [words.say("family.good.practised.young")] : []),
      ...still,
      ...videos,
    ];
  }
  const asked = sayAsked(words, source);
  const many = streakOf(source) >= FAMILY_THRESHOLDS.streakLeast.value;
  const practised = asked.length > 0 ? [] : sayPractised(words, source);
  return [...hurts, ...asked, ...(many ? videos : []), ...still, ...practised, ...(many ? [] : videos)];
}
