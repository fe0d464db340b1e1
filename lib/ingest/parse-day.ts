import { type CalendarDay, dayFromNumber, dayNumber, isCalendarDay } from "@/lib/domain/calendar-day";
import { withoutHiddenMarks } from "./text-key";

export type ParsedDay =
  | { readonly kind: "blank" }
  | {
      readonly kind: "day";
      readonly day: CalendarDay;
      /** What this cell tells of the order in which the file writes days; null: nothing. */
      readonly order: "day-first" | "month-first" | null;
      /** `time-dropped`: an hour stood behind the day. */
      readonly note: "time-dropped" | null;
    }
  | { readonly kind: "ambiguous"; readonly dayFirst: CalendarDay; readonly monthFirst: CalendarDay }
  /** A spreadsheet's count of days. */
  | { readonly kind: "serial"; readonly from1900: CalendarDay; readonly from1904: CalendarDay }
  | {
      readonly kind: "issue";
      readonly code: "not-a-date" | "impossible-date" | "two-digit-year";
      /** A date that may be meant, year first; empty: none. */
      readonly taken: string;
    };

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const EPOCH_1900 = dayNumber("1899-12-30");
const EPOCH_1904 = dayNumber("1904-01-01");

function calendarDay(year: number, month: number, day: number): CalendarDay | null {
  const text = `${String(year).padStart(4, "0")}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
  return isCalendarDay(text) ? text : null;
}

const known = (day: CalendarDay | null, order: "day-first" | "month-first" | null = null): ParsedDay =>
  day === null ? { kind: "issue", code: "impossible-date", taken: "" } : { kind: "day", day, order, note: null };

function monthNumber(word: string): number {
  return MONTHS.indexOf(word.slice(0, 3).toLowerCase()) + 1;
}

/** A day as it stands in a cell. Two readings of one text are both given; which holds is the file's to say. */
export function parseDay(cell: string): ParsedDay {
  const whole = withoutHiddenMarks(cell).trim();
  if (whole === "") return { kind: "blank" };
  if (whole.length > 60) return { kind: "issue", code: "not-a-date", taken: "" };
  const timed = /^(.*?\d)(?:T|\s+)\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?\s*(?:[ap]m|Z|[+-]\d{2}:?\d{2})?$/i.exec(whole);
  const parsed = parseDayText(timed?.[1] ?? whole);
  return timed && parsed.kind === "day" ? { ...parsed, note: "time-dropped" } : parsed;
}

function parseDayText(text: string): ParsedDay {
  const yearFirst = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})$/.exec(text);
  if (yearFirst) return known(calendarDay(Number(yearFirst[1]), Number(yearFirst[3]), Number(yearFirst[4])));
  const packed = /^((?:19|20)\d{2})(\d{2})(\d{2})$/.exec(text);
  if (packed) return known(calendarDay(Number(packed[1]), Number(packed[2]), Number(packed[3])));
  if (/^[1-9]\d{4}(?:\.\d+)?$/.test(text)) {
    const days = Math.floor(Number(text));
    return { kind: "serial", from1900: dayFromNumber(EPOCH_1900 + days), from1904: dayFromNumber(EPOCH_1904 + days) };
  }
  const numeric = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4}|\d{2})$/.exec(text.replace(/\s*([-/.])\s*/g, "$1"));
  if (numeric) return fromNumbers(Number(numeric[1]), Number(numeric[3]), numeric[4] ?? "");
  const dayMonth = /^(\d{1,2})(?:st|nd|rd|th|\.)?[\s-]+([a-z]{3,9})\.?,?[\s-]+(\d{4}|\d{2})$/i.exec(text);
  if (dayMonth) return fromWords(dayMonth[1], dayMonth[2], dayMonth[3]);
  const monthDay = /^([a-z]{3,9})\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4}|\d{2})$/i.exec(text);
  if (monthDay) return fromWords(monthDay[2], monthDay[1], monthDay[3]);
  return { kind: "issue", code: "not-a-date", taken: "" };
}

function fromNumbers(first: number, second: number, yearText: string): ParsedDay {
  const year = yearText.length === 2 ? 2000 + Number(yearText) : Number(yearText);
  const dayFirst = calendarDay(year, second, first);
  const monthFirst = calendarDay(year, first, second);
  if (yearText.length === 2) {
    const taken = dayFirst === monthFirst || monthFirst === null ? dayFirst : dayFirst === null ? monthFirst : null;
    return { kind: "issue", code: "two-digit-year", taken: taken ?? "" };
  }
  if (dayFirst === monthFirst) return known(dayFirst);
  if (dayFirst !== null && monthFirst !== null) return { kind: "ambiguous", dayFirst, monthFirst };
  return dayFirst === null ? known(monthFirst, "month-first") : known(dayFirst, "day-first");
}

function fromWords(day = "", month = "", year = ""): ParsedDay {
  const number = monthNumber(month);
  if (number === 0) return { kind: "issue", code: "not-a-date", taken: "" };
  const found = calendarDay(year.length === 2 ? 2000 + Number(year) : Number(year), number, Number(day));
  return year.length === 2 ? { kind: "issue", code: "two-digit-year", taken: found ?? "" } : known(found);
}
