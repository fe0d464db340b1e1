import type { Words } from "@/lib/words/catalogue";
import { CHANGED, heldFirst, type StoryFindings } from "./story-findings";
import { practisedAsAsked } from "./story-good";
import { type StoryTelling, sayStoryCorrection, sayStoryDoubt, sayStoryFinding } from "./story-sentences";

/** What leads the page among what changed: what was seen last. */
export function latestFirst(told: StoryFindings["told"]): StoryFindings["told"] {
  const changed = told.filter(({ kind }) => CHANGED.includes(kind));
  const provedOn = ({ track }: (typeof changed)[number]): string => track.verdict.change?.provedOn ?? "";
  return [...changed].sort((a, b) => provedOn(b).localeCompare(provedOn(a)));
}

function sayPractised(words: Words, { source, reader }: StoryTelling, good: readonly string[]): string | null {
  const name = source.student.alias;
  if (reader === "young")
    return good.includes(words.say("family.good.practised.young"))
      ? words.say("family-story.heading.practised.young", { name })
      : null;
  const asked = practisedAsAsked(source);
  return asked === null ? null : words.say("family-story.heading.practised", { name, ...asked });
}

function sayNothing(words: Words, { source, reader }: StoryTelling): string {
  const { student, videos, tracks } = source;
  const name = student.alias;
  if (videos.length === 0) return words.say("family-story.heading.empty", { name });
  if (reader === "young") return words.say("family-story.heading.none.young", { name });
  // With the first videos nothing can have changed yet.
  return tracks.every(({ verdict }) => verdict.sessions <= 2)
    ? words.say("family-story.heading.first", { name, videos: videos.length })
    : words.say("family-story.heading.none", { name });
}

/**
 * The finding of the page, with the alias in it and no full stop: a stop; what is taken back; what changed last; what was told and is less sure; long weeks of
 * practice that changed nothing; what is held; practice as it was asked for; else that there is nothing new.
 *
 * @param stop whether something hurts or practice is on hold
 * @param good as `storyGood` says it
 */
export function sayStoryHeading(
  words: Words,
  { told, corrected, doubted }: StoryFindings,
  telling: StoryTelling,
  { stop, good }: { readonly stop: "stop" | "none"; readonly good: readonly string[] },
): string {
  const name = telling.source.student.alias;
  if (stop === "stop") return words.say("family-story.heading.stop", { name });
  const [back] = corrected;
  if (back !== undefined) return sayStoryCorrection(words, back, telling, "heading");
  const first = latestFirst(told)[0] ?? told.find(({ kind }) => kind === "flat") ?? heldFirst(told, telling.source)[0];
  const [doubt] = doubted;
  // What was told and may not hold comes before what only stays as it was.
  if (doubt !== undefined && (first === undefined || !CHANGED.includes(first.kind)))
    return sayStoryDoubt(words, doubt, telling, "heading");
  if (first !== undefined) return sayStoryFinding(words, first, telling, { name });
  return sayPractised(words, telling, good) ?? sayNothing(words, telling);
}
