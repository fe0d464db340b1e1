import { daysBetween } from "@/lib/domain/calendar-day";
import { ownAgeDay } from "@/lib/domain/consent";
import { FAMILY_THRESHOLDS } from "@/lib/verdict/family-thresholds";
import { WATCH_THRESHOLDS } from "@/lib/verdict/watch-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayDay, sayOnDay } from "@/lib/words/day-words";
import { capital } from "@/lib/words/say-family";
import { sayCount } from "@/lib/words/say-family-story";
import type { Glyph } from "./basic-model";
import { familyReader } from "./family-findings";
import type { FamilyStory } from "./family-story-model";
import type { StorySource } from "./family-story-source";
import { saidGlyph } from "./said";
import { sayStoryContact } from "./story-contact";
import { CHANGED, heldFirst, SAME, type StoryFinding, type StoryFindings, storyFindings } from "./story-findings";
import { storyGood } from "./story-good";
import { latestFirst, sayStoryHeading } from "./story-heading";
import { storyNumbers } from "./story-numbers";
import { type StoryTelling, sayStoryCorrection, sayStoryDoubt, sayStoryTold } from "./story-sentences";
import { sayStoryUnsure, unsureFirst } from "./story-unsure";

const PAUSES: readonly string[] = ["injury", "pause"];

/** For whom the sentences are written; of whom no year of birth is known is told the plainer words. */
export function storyReader(student: StorySource["student"], today: string): "young" | "child" | "adult" {
  if (familyReader(student, today) === "young") return "young";
  const grown = ownAgeDay({ birthYear: student.birthYear, ownConsentAge: FAMILY_THRESHOLDS.adultAge.value });
  return grown !== null && today >= grown ? "adult" : "child";
}

/** Why there is no practice today: something was said to hurt, or the coach noted a pause; null: there is. */
function stopOf({ practice, events, today }: StorySource): "hurts" | "pause" | null {
  if (practice.some(({ pain }) => pain !== null)) return "hurts";
  const paused = events.some(
    ({ kind, day, endDay }) => PAUSES.includes(kind) && day <= today && (endDay ?? today) >= today,
  );
  return paused ? "pause" : null;
}

/** Free words without the mark at their end, behind which a sentence sets its full stop; of marks alone nothing is left. */
function ended(text: string): string {
  return text.replace(/[.!?…\s]+$/, "").trim();
}

function sayTask(words: Words, source: StorySource): string {
  const { task, student, today } = source;
  const stop = stopOf(source);
  const reader = storyReader(student, today);
  if (stop === "pause") return words.say("family-story.task.pause");
  if (stop === "hurts") return words.say(`family-story.task.stop.${reader === "adult" ? "adult" : "child"}`);
  if (task === null) return words.say(`family-story.task.none${reader === "young" ? ".young" : ""}`);
  const drill = ended(task.drill) || task.drill.trim();
  if (reader === "young") return words.say("family-story.task.do.young", { drill });
  const ahead = task.remeasureOn !== null && task.remeasureOn > today;
  return words.say("family-story.task.do", {
    drill,
    dose: ended(task.dose) === "" ? "none" : capital(ended(task.dose)),
    day: ahead ? sayDay(words, task.remeasureOn ?? today, "with-weekday") : "none",
  });
}

/** That the latest video is old, where anything is told of what was seen on it; empty: it isn't, or none is. */
function sayOld(words: Words, told: readonly StoryFinding[], { source, reader }: StoryTelling): string {
  const { today } = source;
  const last = told
    .map((found) => found.last ?? "")
    .sort()
    .at(-1);
  if (!last || daysBetween(last, today) <= WATCH_THRESHOLDS.watchAway.value) return "";
  return words.say(`family-story.old${reader === "young" ? ".young" : ""}`, { day: sayOnDay(words, last, today) });
}

/** The mark of what is told: none of what isn't settled, for that has no place among what changed. */
function markOf({ track }: StoryFinding): Glyph | null {
  const glyph = saidGlyph(track.verdict);
  return glyph === "open" ? null : glyph;
}

/** What changed, or that nothing did; beyond the most that are told here, the rest. */
function changedOf(words: Words, { told, corrected, doubted }: StoryFindings, telling: StoryTelling) {
  const { source, reader } = telling;
  const changed = latestFirst(told);
  const same = SAME.flatMap((kind) => told.filter((found) => found.kind === kind));
  const first = changed.length > 0 ? changed.slice(0, FAMILY_THRESHOLDS.changedMost.value) : same.slice(0, 1);
  const back = [
    ...corrected.map((each) => sayStoryCorrection(words, each, telling, "told")),
    ...doubted.map((each) => sayStoryDoubt(words, each, telling, "told")),
  ];
  const nothing = changed.length === 0 && back.length === 0 && reader !== "young" && source.tracks.length > 0;
  const none = nothing && !first.some(({ kind }) => kind === "flat") ? [words.say("family-story.none")] : [];
  const sentences = [...back, ...none, ...first.map((found) => sayStoryTold(words, found, telling))];
  const marks = [...[...back, ...none].map(() => null), ...first.map(markOf)];
  const old = sentences.length === 0 ? "" : sayOld(words, told, telling);
  return old === "" ? { sentences, marks, first } : { sentences: [...sentences, old], marks: [...marks, null], first };
}

/** What can't be told beside the first of it: what is being checked or looked at again by name, the rest by its count. */
function furtherOf(words: Words, further: readonly StoryFinding[], telling: StoryTelling): readonly string[] {
  const named =
    telling.reader === "young" ? further : further.filter(({ kind }) => kind !== "open" && kind !== "films");
  const more = further.length - named.length;
  return [
    ...named.map((each) => sayStoryTold(words, each, telling)),
    ...(more === 0 ? [] : [words.say("family-story.more", { more, count: sayCount(words, more) })]),
  ];
}

/**
 * What a family is told: one good thing that was counted, what changed or that nothing did, one thing that can't be told yet
 * with what would tell it, and one task (SEASON.md 19, 23 to 25). A change is told only where it stands on the roster's list.
 */
export function buildFamilyStory(words: Words, source: StorySource): FamilyStory {
  const telling: StoryTelling = { source, reader: familyReader(source.student, source.today) };
  const found = storyFindings(source);
  const { told } = found;
  const good = storyGood(words, heldFirst(told, source), telling);
  const changed = changedOf(words, found, telling);
  const [unsure, ...further] = unsureFirst(told, source);
  const left = told.filter((each) => each.kind !== "good" && !changed.first.includes(each) && !further.includes(each));
  const stop = stopOf(source) === null ? "none" : "stop";
  return {
    heading: sayStoryHeading(words, found, telling, { stop, good }),
    good: good[0] ?? words.say("family.good.none"),
    changed: changed.sentences,
    changedMarks: changed.marks,
    unsure: unsure === undefined ? "" : sayStoryUnsure(words, unsure, telling),
    task: sayTask(words, source),
    contact: sayStoryContact(words, told, telling),
    alsoGood: good.slice(1),
    rest: [
      ...left
        .filter(({ kind }) => CHANGED.includes(kind) || SAME.includes(kind))
        .map((each) => sayStoryTold(words, each, telling)),
      ...furtherOf(words, further, telling),
    ],
    numbers: storyNumbers(words, told, telling),
  };
}
