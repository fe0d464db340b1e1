import { MOST_MINUTES } from "@/lib/domain/drill-record";
import type { DrillAssignment } from "@/lib/domain/student";
import { type Words, wordsFor } from "./catalogue";

const phrases = new WeakMap<Words, ReadonlyMap<string, number>>();

function phrasesOf(words: Words): ReadonlyMap<string, number> {
  const kept = phrases.get(words);
  if (kept) return kept;
  const made = new Map(
    Array.from({ length: MOST_MINUTES }, (_, at) => [words.say("dose.minutes", { minutes: at + 1 }), at + 1]),
  );
  phrases.set(words, made);
  return made;
}

/**
 * The minutes a day of a dose and the coach's own words. Where the minutes have no field, because the drill was given before
 * there was one, the words may begin with them, as a form of this language, or of a coach's page, wrote them.
 *
 * @returns `minutes` null where nothing says them: whatever the dose says is among the words then
 */
export function minutesInDose(
  words: Words,
  { dose, minutesADay = null }: Pick<DrillAssignment, "dose" | "minutesADay">,
): { readonly minutes: number | null; readonly words: string } {
  if (minutesADay !== null) return { minutes: minutesADay, words: dose };
  const [first = "", ...rest] = dose.split("; ");
  // A coach's form wrote them in the language of its page, whichever the family is told in.
  const minutes = phrasesOf(words).get(first) ?? phrasesOf(wordsFor("en")).get(first) ?? null;
  return minutes === null ? { minutes, words: dose } : { minutes, words: rest.join("; ") };
}
