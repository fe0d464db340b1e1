import type { ArchivedStudent } from "./archive";
import { type CalendarDay, dayFromNumber, dayNumber } from "./calendar-day";

/**
 * Students whom an archive brings into an academy of others. Their consents were given to whoever kept the record before: they
 * are kept as history that ends with the day before the import, so one that begins later is in force on no day.
 *
 * @param importDay the academy's day of the import
 * @throws RangeError when the import's day is not a day that exists
 */
export function endBroughtConsents(
  students: readonly ArchivedStudent[],
  importDay: CalendarDay,
): readonly ArchivedStudent[] {
  const before = dayFromNumber(dayNumber(importDay) - 1);
  const ended = (untilDay: CalendarDay | null) => (untilDay !== null && untilDay < before ? untilDay : before);
  return students.map((student) => ({
    ...student,
    consents: student.consents.map((row) => ({ ...row, untilDay: ended(row.untilDay) })),
  }));
}
