import type { SaidPain } from "@/lib/domain/practice";
import type { StudentEvent } from "@/lib/domain/student";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayEventDays } from "@/lib/words/say-event";
import { sayPlace } from "@/lib/words/say-place";

const PAUSES: readonly string[] = ["injury", "pause"];

/**
 * Why a drill is not given today, in sentences; empty: nothing stands against it. Whoever may know what hurts is told the
 * place as the family said it; others learn of a pause by its days alone.
 *
 * @param events as read without a proof that pain may be seen
 * @param pain what was said to hurt and stands; null: the viewer may not know it
 */
export function stopFirst(
  words: Words,
  source: {
    readonly events: readonly StudentEvent[];
    readonly pain: readonly SaidPain[] | null;
    readonly today: string;
  },
): readonly string[] {
  const { events, today } = source;
  const pause = events.findLast(
    ({ kind, day, endDay }) => PAUSES.includes(kind) && day <= today && (endDay ?? today) >= today,
  );
  const said = source.pain?.at(-1);
  const why = [
    ...(said === undefined
      ? []
      : [words.say("stop-first.pain", { day: sayDay(words, said.day, "full"), place: sayPlace(words, said.place) })]),
    ...(pause === undefined ? [] : [words.say("stop-first.pause", { days: sayEventDays(words, pause) })]),
  ];
  return why.length === 0 ? [] : [...why, words.say("stop-first.text")];
}
