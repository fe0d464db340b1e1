import { dayNumber } from "./calendar-day";
import type { StudentEvent } from "./student";

/** What may stop practice, told by its days: of a pause for an injury nothing else is asked. */
export type Stopping = Pick<StudentEvent, "kind" | "day" | "endDay">;

/**
 * Days on which practice was stopped by a pause or an injury, as day numbers. A break isn't counted: it forbids nothing.
 *
 * @param events of one student that stand, in any order; one without an end goes on
 * @param first first day number that is looked at
 * @param last last one; nothing is counted where it lies before the first
 */
export function stoppedDays(events: readonly Stopping[], first: number, last: number): ReadonlySet<number> {
  const stopped = new Set<number>();
  for (const { kind, day, endDay } of events) {
    if (kind !== "pause" && kind !== "injury") continue;
    const until = endDay ? Math.min(last, dayNumber(endDay)) : last;
    for (let at = Math.max(first, dayNumber(day)); at <= until; at++) stopped.add(at);
  }
  return stopped;
}
