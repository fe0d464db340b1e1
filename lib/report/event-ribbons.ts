import { dayNumber } from "@/lib/domain/calendar-day";
import type { StudentEvent } from "@/lib/domain/student";
import type { Words } from "@/lib/words/catalogue";
import { sayEvent } from "@/lib/words/say-event";
import type { ChartRibbon } from "./chart-model";

/**
 * Events as bars on the time axis: a break and a pause from their first day to their last, all others a day.
 *
 * @param days first and last day drawn; what lies outside is left out, what reaches in is cut
 */
export function eventRibbons(
  words: Words,
  events: readonly StudentEvent[],
  days: { readonly first: string; readonly last: string },
): readonly ChartRibbon[] {
  return events
    .filter((event) => event.day <= days.last && (event.endDay ?? event.day) >= days.first)
    .map((event) => {
      const from = Math.max(dayNumber(days.first), dayNumber(event.day));
      const to = Math.min(dayNumber(days.last), dayNumber(event.endDay ?? event.day));
      return { from, to: Math.max(from, to), label: sayEvent(words, event) };
    });
}
