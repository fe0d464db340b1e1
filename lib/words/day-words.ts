import { format, parseISO } from "date-fns";
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

const PATTERNS: Readonly<Record<DayStyle, string>> = {
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
};

/** A day in words, as “9 Sep”, “Wed 9 Sep” or “Wed 9 Sep 2026”. */
export function sayDay(_words: Words, day: string, style: DayStyle): string {
  return format(parseISO(day), PATTERNS[style]);
}

/** A stretch of days: “6–21 Jul”, “25 Jun – 29 Aug”, with years where they differ. */
export function sayStretch(words: Words, from: string, to: string): string {
  if (from === to) return sayDay(words, from, "short");
  if (from.slice(0, 4) !== to.slice(0, 4))
    return words.say("day.stretch", {
      from: format(parseISO(from), "d MMM yyyy"),
      to: format(parseISO(to), "d MMM yyyy"),
    });
  if (from.slice(0, 7) === to.slice(0, 7))
    return words.say("day.stretch-in-month", { from: format(parseISO(from), "d"), to: format(parseISO(to), "d MMM") });
  return words.say("day.stretch", { from: sayDay(words, from, "short"), to: sayDay(words, to, "short") });
}

/** A day as it is told to a family: “Thursday 19 November”. */
export function sayLongDay(_words: Words, day: string): string {
  return format(parseISO(day), "EEEE d MMMM");
}
