import { goesOn } from "@/lib/domain/goes-on";
import type { StudentEvent } from "@/lib/domain/student";
import type { Words } from "./catalogue";
import { sayDay, sayStretch } from "./day-words";

/** When it happened: a day, a stretch, or a day from which it goes on. */
export function sayEventDays(words: Words, event: StudentEvent): string {
  if (goesOn(event)) return words.say("day.since", { day: sayDay(words, event.day, "short") });
  const end = event.endDay ?? null;
  return end === null ? sayDay(words, event.day, "short") : sayStretch(words, event.day, end);
}

/**
 * An event in a few words for a chart: its kind and its days, of a new reader who reads. Never where it hurts: a chart is
 * printed and handed on.
 */
export function sayEvent(words: Words, event: StudentEvent): string {
  const kind =
    event.kind === "reader-change" && event.note !== ""
      ? words.say("happen.reads-now", { reader: event.note })
      : words.say(`event.${event.kind}`);
  return words.say("chart.event", { kind, day: sayEventDays(words, event) });
}
