import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";

/** To whom months are told; the youngest read no year, which is a number. */
export interface MonthsTo {
  readonly reader: "young" | "other";
  readonly today: string;
}

/**
 * A stretch of days in whole months: `stretch` as “April to June”, `or` as the months in one of which something happened,
 * “March or April”, or “March to June” where there are more than two. A year other than today's is said.
 *
 * @param from first day, `YYYY-MM-DD`
 * @param to last day, on or after it
 */
export function familyMonths(
  words: Words,
  [from, to]: readonly [from: string, to: string],
  as: "stretch" | "or",
  { reader, today }: MonthsTo,
): string {
  const year = (day: string): string => day.slice(0, 4);
  const apart = 12 * (Number(year(to)) - Number(year(from))) + Number(to.slice(5, 7)) - Number(from.slice(5, 7));
  const dated = reader !== "young" && (year(from) !== year(to) || year(to) !== year(today));
  const month = (day: string): string => sayDay(words, day, dated ? "long-month-year" : "long-month");
  if (apart === 0) return month(from);
  const key = apart > 1 ? ".from-to" : as === "or" ? ".or" : "";
  return words.say(`family-page.months${key}`, { from: month(from), to: month(to) });
}
