import { differenceInCalendarDays, parseISO } from "date-fns";

/** A day in the calendar where the student is, `YYYY-MM-DD`. */
export type CalendarDay = string;

const DAY_MS = 86_400_000;
/** The calendar repeats after 400 years of so many days; `Date.UTC` takes years below 100 for those of the last century. */
const CYCLE = { years: 400, days: 146_097 };

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** The number that some digits of a text write; NaN: one of them is none. */
function digits(text: string, from: number, to: number): number {
  let number = 0;
  for (let at = from; at < to; at++) {
    const digit = text.charCodeAt(at) - 48;
    if (digit < 0 || digit > 9) return Number.NaN;
    number = number * 10 + digit;
  }
  return number;
}

/** Whole days since 1 January 1970; null: no day that exists, written year first. A page asks it of thousands: no object is made. */
function numberOf(text: string): number | null {
  if (text.length !== 10 || text[4] !== "-" || text[7] !== "-") return null;
  const year = digits(text, 0, 4);
  const month = digits(text, 5, 7);
  const day = digits(text, 8, 10);
  const isLeap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const last = month === 2 && isLeap ? 29 : (MONTH_DAYS[month - 1] ?? 0);
  if (Number.isNaN(year) || !(day >= 1 && day <= last)) return null;
  return Date.UTC(year + CYCLE.years, month - 1, day) / DAY_MS - CYCLE.days;
}

/** Whether a text is a day that exists, written year first. */
export function isCalendarDay(text: string): boolean {
  return numberOf(text) !== null;
}

/**
 * Whole days since 1 January 1970; negative before it. Differences of two are days between them in any zone.
 *
 * @throws RangeError when the text is not a day that exists
 */
export function dayNumber(day: CalendarDay): number {
  const number = numberOf(day);
  if (number === null) throw new RangeError(`not a day: ${day}`);
  return number;
}

/** The day of a day number. */
export function dayFromNumber(number: number): CalendarDay {
  return new Date(number * DAY_MS).toISOString().slice(0, 10);
}

/** Days from the first to the second; negative when the second is earlier. */
export function daysBetween(first: CalendarDay, second: CalendarDay): number {
  const [from, to] = [numberOf(first), numberOf(second)];
  if (from !== null && to !== null) return to - from;
  return differenceInCalendarDays(parseISO(second), parseISO(first));
}
