import { format, parseISO } from "date-fns";
import { de } from "date-fns/locale/de";
import type { Words } from "./catalogue";

/** How a day is written. */
export type DayStyle =
  | "weekday"
  | "short"
  | "with-weekday"
  | "full"
  | "day-year"
  | "month"
  | "month-year"
  | "year"
  | "long-month"
  | "long-month-year";

interface Patterns extends Readonly<Record<DayStyle, string>> {
  /** The first day of a stretch within one month. */
  readonly "in-month": string;
  readonly spoken: string;
  readonly "day-month": string;
  readonly "day-month-year": string;
}

const PATTERNS = {
  en: {
    weekday: "EEE",
    short: "d MMM",
    "with-weekday": "EEE d MMM",
    full: "EEE d MMM yyyy",
    "day-year": "d MMM yyyy",
    month: "MMM",
    "month-year": "MMM yyyy",
    year: "yyyy",
    "long-month": "MMMM",
    "long-month-year": "MMMM yyyy",
    "in-month": "d",
    spoken: "EEEE d MMMM",
    "day-month": "d MMMM",
    "day-month-year": "d MMMM yyyy",
  },
  // A shortened month ends in a full stop, which a sentence would double.
  de: {
    weekday: "EEEEEE",
    short: "d. MMMM",
    "with-weekday": "EEEEEE, d. MMMM",
    full: "EEEEEE, d. MMMM yyyy",
    "day-year": "d. MMMM yyyy",
    month: "LLL",
    "month-year": "LLL yyyy",
    year: "yyyy",
    "long-month": "LLLL",
    "long-month-year": "LLLL yyyy",
    "in-month": "d.",
    spoken: "EEEE, d. MMMM",
    "day-month": "d. MMMM",
    "day-month-year": "d. MMMM yyyy",
  },
} as const satisfies Readonly<Record<string, Patterns>>;

function written({ locale }: Words, day: string, style: keyof Patterns): string {
  return locale === "de"
    ? format(parseISO(day), PATTERNS.de[style], { locale: de })
    : format(parseISO(day), PATTERNS.en[style]);
}

/** A day in words, as “9 Sep”, “Wed 9 Sep” or “Wed 9 Sep 2026”; in German “9. September”, “Mi, 9. September”. */
export function sayDay(words: Words, day: string, style: DayStyle): string {
  return written(words, day, style);
}

/** A stretch of days: “6–21 Jul”, “25 Jun – 29 Aug”, with years where they differ. */
export function sayStretch(words: Words, from: string, to: string): string {
  if (from === to) return sayDay(words, from, "short");
  if (from.slice(0, 4) !== to.slice(0, 4))
    return words.say("day.stretch", { from: sayDay(words, from, "day-year"), to: sayDay(words, to, "day-year") });
  if (from.slice(0, 7) === to.slice(0, 7))
    return words.say("day.stretch-in-month", {
      from: written(words, from, "in-month"),
      to: sayDay(words, to, "short"),
    });
  return words.say("day.stretch", { from: sayDay(words, from, "short"), to: sayDay(words, to, "short") });
}

/** A day as it is told to a family: “Thursday 19 November”. */
export function sayLongDay(words: Words, day: string): string {
  return written(words, day, "spoken");
}

/** A day as a family is told it: “3 May”, with the year where that is another one. */
export function sayOnDay(words: Words, day: string, today: string): string {
  return written(words, day, day.slice(0, 4) === today.slice(0, 4) ? "day-month" : "day-month-year");
}

/** The month of a day: “May”, with the year where that is another one. */
export function sayMonth(words: Words, day: string, today: string): string {
  return sayDay(words, day, day.slice(0, 4) === today.slice(0, 4) ? "long-month" : "long-month-year");
}
