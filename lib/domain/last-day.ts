import { addMonths, format, parseISO, subDays } from "date-fns";
import { type CalendarDay, isCalendarDay } from "./calendar-day";

/**
 * The last of so many months that begin on a day: 12 months from 1 March 2026 end on 28 February 2027. Where the month has no
 * such day, they end as the month does: a month from 31 January ends on 27 February.
 *
 * @throws RangeError when the text is not a day that exists
 */
export function lastDay(from: CalendarDay, months: number): CalendarDay {
  if (!isCalendarDay(from)) throw new RangeError(`not a day: ${from}`);
  return format(subDays(addMonths(parseISO(from), months), 1), "yyyy-MM-dd");
}
