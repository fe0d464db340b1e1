import { dayNumber } from "@/lib/domain/calendar-day";
import { goesOn } from "@/lib/domain/goes-on";
import type { StudentEvent } from "@/lib/domain/student";
import type { Words } from "@/lib/words/catalogue";
import { sayEvent } from "@/lib/words/say-event";
import type { ChartRibbon } from "./chart-model";

/** The last day of an event as far as is known: one that goes on has lasted until today. */
function lastDay(event: StudentEvent, today: string): string {
  return goesOn(event) ? (event.day > today ? event.day : today) : (event.endDay ?? event.day);
}

/**
 * Events as bars on the time axis: a break and a pause from their first day to their last, or to the last day drawn with
 * an open end where they go on; all others a day.
 *
 * @param days first and last day drawn; what lies outside is left out, what reaches in is cut
 */
export function eventRibbons(
  words: Words,
  events: readonly StudentEvent[],
  days: { readonly first: string; readonly last: string },
): readonly ChartRibbon[] {
  return events
    .filter((event) => event.day <= days.last && lastDay(event, days.last) >= days.first)
    .map((event) => {
      const from = Math.max(dayNumber(days.first), dayNumber(event.day));
      const to = Math.min(dayNumber(days.last), dayNumber(lastDay(event, days.last)));
      const drawn = { from, to: Math.max(from, to), label: sayEvent(words, event) };
      return goesOn(event) ? { ...drawn, end: "open" } : drawn;
    });
}

/** What is marked under a time axis in one sentence, for who can't see it; empty: nothing is. */
export function sayRibbons(words: Words, ribbons: readonly ChartRibbon[]): string {
  if (ribbons.length === 0) return "";
  return words.say("chart.events", { list: ribbons.map((ribbon) => ribbon.label).join("; ") });
}
