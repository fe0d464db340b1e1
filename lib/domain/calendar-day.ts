import { differenceInCalendarDays, parseISO } from "date-fns";

/** A day in the calendar where the student is, `YYYY-MM-DD`. */
export type CalendarDay = string;

/** Whether a text is a day that exists, written year first. */
export function isCalendarDay(text: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return false;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  const date = new Date(Date.UTC(year, month - 1, day));
  date.setUTCFullYear(year);
  return date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}

/**
 * Whole days since 1 January 1970; negative before it. Differences of two are days between them in any zone.
 *
 * @throws RangeError when the text is not a day that exists
 */
export function dayNumber(day: CalendarDay): number {
  if (!isCalendarDay(day)) throw new RangeError(`not a day: ${day}`);
  return Math.round(Date.parse(`${day}T00:00:00Z`) / 86_400_000);
}

/** The day of a day number. */
export function dayFromNumber(number: number): CalendarDay {
  return new Date(number * 86_400_000).toISOString().slice(0, 10);
}

/** Days from the first to the second; negative when the second is earlier. */
export function daysBetween(first: CalendarDay, second: CalendarDay): number {
  return differenceInCalendarDays(parseISO(second), parseISO(first));
}
