import { addMonths, format, parseISO } from "date-fns";
import { type CalendarDay, dayFromNumber, dayNumber } from "./calendar-day";

/** What a record's time is counted from. */
export interface KeptRecord {
  /** The day on which the student left; null: is here. */
  readonly departedOn: CalendarDay | null;
  /** The last day on which anything was entered of the student: a session, practice, a form, a consent. */
  readonly lastEntered: CalendarDay;
}

/** Why a record's time runs out, and the first day on which it is over. */
export interface KeepingEnd {
  readonly kind: "departed" | "idle";
  readonly endDay: CalendarDay;
}

/**
 * When a record's time is over: so many months after the student left, or after anything was last entered. A month that is
 * shorter ends it on its last day.
 *
 * @param months how long an academy keeps records, at least 1
 * @throws RangeError where months is no whole number of at least 1
 */
export function keepingEnd({ departedOn, lastEntered }: KeptRecord, months: number): KeepingEnd {
  if (!Number.isInteger(months) || months < 1) throw new RangeError(`no number of months: ${months}`);
  const after = (day: CalendarDay): CalendarDay => format(addMonths(parseISO(day), months), "yyyy-MM-dd");
  if (departedOn !== null) return { kind: "departed", endDay: after(departedOn) };
  return { kind: "idle", endDay: after(lastEntered) };
}

/**
 * The day on which what is announced today is erased; null: it is too early to announce it.
 *
 * @param noticeDays days between the announcement and the erasing, at least
 */
export function announcedDue(endDay: CalendarDay, today: CalendarDay, noticeDays: number): CalendarDay | null {
  const soonest = dayNumber(today) + noticeDays;
  const end = dayNumber(endDay);
  return end > soonest ? null : dayFromNumber(Math.max(end, soonest));
}
