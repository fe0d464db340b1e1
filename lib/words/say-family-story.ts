import type { Fundamental, Unit } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import type { Direction } from "@/lib/domain/track-verdict";
import type { MessageArguments, Words } from "./catalogue";
import { sayNumber } from "./number-words";
import { capital } from "./say-family";

/** Whose it is: “your grip” in the sentences, “Dot’s grip” in a heading, which may be read by itself. */
export type Whose = "your" | { readonly name: string };

/** What a sentence is about, and for whom left and right are said. */
export interface StorySubject {
  readonly fundamental: Pick<Fundamental, "id" | "ownName">;
  readonly hand: Hand;
  readonly whose: Whose;
}

/** How a change away from the goal is told: it began, it began anew, or it went on to the side on which it was. */
export type SlipForm = "started" | "again" | "more";

function subjectWords(words: Words, { hand, whose, fundamental }: StorySubject): MessageArguments {
  return {
    whose: whose === "your" ? "your" : "named",
    name: whose === "your" ? "" : whose.name,
    // Left and right are the student's own, from where they stand (SEASON.md 22).
    trail: words.say(`family.hand.${hand}`),
    lead: words.say(`family.hand.${hand === "right" ? "left" : "right"}`),
    part: fundamental.ownName ?? "",
  };
}

/** What a fundamental is about, as the first sentences tell it: “your right-hand grip”, “the way Dot’s feet point”. */
export function sayStoryPart(words: Words, subject: StorySubject): string {
  const { id, ownName } = subject.fundamental;
  return words.say(`family-story.part.${ownName === null ? id : "own"}`, subjectWords(words, subject));
}

/**
 * A change away from the goal in the words of its direction, without a full stop: “Your feet have started to point right again”.
 * An academy's own fundamental has no words for a direction: it is said not to be as good.
 *
 * @param when as `sayWhen` says the last day before it
 */
export function sayStorySlip(
  words: Words,
  subject: StorySubject,
  { direction, form, when }: { readonly direction: Direction; readonly form: SlipForm; readonly when: string },
): string {
  const { id, ownName } = subject.fundamental;
  if (ownName !== null)
    return capital(words.say("family-story.finding.worse", { of: sayStoryPart(words, subject), when }));
  return capital(words.say(`family-story.slip.${id}.${direction}`, { ...subjectWords(words, subject), form, when }));
}

/** A small whole number as it stands within a sentence: in words up to twelve. */
export function sayCount(words: Words, count: number): string {
  return words.say("family-story.count", { count });
}

/** A size with its unit in plain words, rounded up, so that what is said to be smaller than it is: “2 degrees”. */
export function saySizeBelow(words: Words, size: number, unit: Unit): string {
  const number = size >= 1 ? sayNumber(words, Math.ceil(size), 0) : sayNumber(words, Math.ceil(size * 10) / 10, 1);
  return words.say(`family-story.unit.${unit}`, { number, size: Number(number) });
}
