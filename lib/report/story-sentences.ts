import { daysBetween } from "@/lib/domain/calendar-day";
import { FAMILY_THRESHOLDS } from "@/lib/verdict/family-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayMonth, sayOnDay } from "@/lib/words/day-words";
import { capital, sayWhen } from "@/lib/words/say-family";
import { type StorySubject, sayCount, sayStoryPart, sayStorySlip, type Whose } from "@/lib/words/say-family-story";
import { dayBefore, type familyReader } from "./family-findings";
import type { StorySource } from "./family-story-source";
import type { StoryCorrection, StoryDoubt, StoryFinding } from "./story-findings";
import { type StorySlip, storySlip } from "./story-slip";

/** To whom and how a finding is told. */
export interface StoryTelling {
  readonly source: StorySource;
  readonly reader: ReturnType<typeof familyReader>;
}

function subjectOf({ track }: Pick<StoryFinding, "track">, { source }: StoryTelling, whose: Whose): StorySubject {
  return { fundamental: track.history.fundamental, hand: source.student.hand, whose };
}

function slipOf({ track }: StoryFinding, { source }: StoryTelling): StorySlip | null {
  return track.verdict.change === null ? null : storySlip(track, track.verdict.change, source);
}

/** A finding in one clause without a full stop, as a heading bears it: “Dot’s feet have started to point right again”. */
export function sayStoryFinding(words: Words, found: StoryFinding, telling: StoryTelling, whose: Whose): string {
  const subject = subjectOf(found, telling, whose);
  const { today } = telling.source;
  const when = found.track.verdict.change === null ? "" : sayWhen(words, dayBefore(found.track), today);
  const slip = found.kind === "worse" ? slipOf(found, telling) : null;
  if (slip !== null) return sayStorySlip(words, subject, { ...slip, when });
  const key = `family-story.finding.${found.kind}`;
  const youngest = telling.reader === "young" && words.has(`${key}.young`) ? `${key}.young` : key;
  const weeks = found.finding.kind === "good" ? found.finding.weeks : 0;
  return capital(words.say(youngest, { of: sayStoryPart(words, subject), when, weeks }));
}

/** When it began, as the stretch in which it did, once that is no longer new. */
function sayBegan(words: Words, { track }: StoryFinding, today: string): string[] {
  const { change } = track.verdict;
  if (change === null || daysBetween(change.to, today) <= 7 * FAMILY_THRESHOLDS.freshWeeks.value) return [];
  if (change.from.slice(0, 7) === change.to.slice(0, 7))
    return [words.say("family-story.told.began", { when: sayWhen(words, change.from, today) })];
  const [from, to] = [sayMonth(words, change.from, today), sayMonth(words, change.to, today)];
  return [words.say("family-story.told.began.stretch", { from, to })];
}

function sayWorse(words: Words, found: StoryFinding, telling: StoryTelling, finding: string): string {
  const slip = slipOf(found, telling);
  const { today } = telling.source;
  const helped = slip?.helpedOn ? sayWhen(words, slip.helpedOn, today) : "none";
  const told = words.say("family-story.told.worse", { finding, why: slip?.why ?? "none", helped });
  return [told, ...sayBegan(words, found, today)].join(" ");
}

/** Whether the drill was changed already: one for the same thing was given lately, after another. */
function nextDrill({ track }: StoryFinding, { task, drills, today }: StorySource): "new" | "change" {
  const { id } = track.history.fundamental;
  if (task === null || task.fundamentalId !== id) return "change";
  const fresh = daysBetween(task.start, today) <= 7 * FAMILY_THRESHOLDS.newDrillWeeks.value;
  return fresh && drills.some((each) => each.fundamentalId === id && each.start < task.start) ? "new" : "change";
}

function sayFlat(words: Words, found: StoryFinding, telling: StoryTelling, finding: string): string {
  const { plateau } = found;
  if (plateau === null || !("practised" in plateau)) return words.say("family-story.told.sentence", { finding });
  const { practised, asked, drills } = plateau;
  return words.say(`family-story.told.${found.kind}`, {
    finding,
    practised: Math.min(practised, asked ?? practised),
    asked: asked ?? "none",
    drills,
    of: capital(sayStoryPart(words, subjectOf(found, telling, "your"))),
    next: nextDrill(found, telling.source),
  });
}

/** A finding in whole sentences to the student; empty: nothing is said of it to that reader. */
export function sayStoryTold(words: Words, found: StoryFinding, telling: StoryTelling): string {
  const finding = sayStoryFinding(words, found, telling, "your");
  const short = found.track.verdict.reach?.kind === "stopped-short" ? "yes" : "no";
  if (found.kind === "away") {
    const of = capital(sayStoryPart(words, subjectOf(found, telling, "your")));
    const day = sayOnDay(words, found.last ?? telling.source.today, telling.source.today);
    return words.say(`family-story.told.away${telling.reader === "young" ? ".young" : ""}`, { of, day });
  }
  if (telling.reader === "young" && found.kind !== "better")
    return words.say("family-story.told.sentence", { finding });
  switch (found.kind) {
    case "better":
      return words.say("family-story.told.better", { finding, short: telling.reader === "young" ? "no" : short });
    case "worse":
      return sayWorse(words, found, telling, finding);
    case "flat":
    case "unpractised":
      return sayFlat(words, found, telling, finding);
    case "same": {
      const videos = found.finding.kind === "same" ? found.finding.videos : 0;
      const place = found.track.verdict.position ?? "none";
      return words.say("family-story.told.same", { finding, videos, count: sayCount(words, videos), place });
    }
    default:
      return words.say(`family-story.told.${words.has(`family-story.told.${found.kind}`) ? found.kind : "sentence"}`, {
        finding,
      });
  }
}

/** What a track is about: in the student's words, or by name in a heading. */
function sayTrack(
  words: Words,
  track: StoryFinding["track"],
  { source: { student } }: StoryTelling,
  place: "told" | "heading",
): string {
  const whose: Whose = place === "told" ? "your" : { name: student.alias };
  return sayStoryPart(words, { fundamental: track.history.fundamental, hand: student.hand, whose });
}

/** What is taken back: in the student's words, or as a heading. */
export function sayStoryCorrection(
  words: Words,
  { track, correction }: StoryCorrection,
  telling: StoryTelling,
  place: "told" | "heading",
): string {
  const of = sayTrack(words, track, telling, place);
  const young = telling.reader === "young";
  if (place === "heading") return words.say(`family-story.heading.corrected${young ? ".young" : ""}`, { of });
  return words.say(`family-story.corrected.${young ? "young" : correction.said}`, {
    of,
    on: sayOnDay(words, correction.on, telling.source.today),
    videos: correction.videos ?? "yes",
  });
}

/** What was told for sure and is less sure now: in the student's words, or as a heading. */
export function sayStoryDoubt(
  words: Words,
  { track, doubt }: StoryDoubt,
  telling: StoryTelling,
  place: "told" | "heading",
): string {
  const of = sayTrack(words, track, telling, place);
  const young = telling.reader === "young";
  if (place === "heading") return words.say(`family-story.heading.${young ? "corrected.young" : "doubted"}`, { of });
  if (young) return words.say("family-story.corrected.young", { of });
  return words.say(`family-story.doubted.${doubt.said}`, { of, on: sayOnDay(words, doubt.on, telling.source.today) });
}
