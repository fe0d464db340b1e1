import { type CalendarDay, dayFromNumber, dayNumber } from "./calendar-day";
import { type Consent, type ConsentAsked, type ConsentKind, consentStanding } from "./consent";
import { KEEPING_THRESHOLDS } from "./keeping-thresholds";
import { lastDay } from "./last-day";

/**
 * From when to when a consent is usually asked for: a year from the day of asking, or, where everything asked for is in force
 * and ends within a year, a year from the day after the first of these ends.
 */
export function usualConsent(
  consents: readonly Consent[],
  kinds: readonly ConsentKind[],
  asked: ConsentAsked,
): { readonly from: CalendarDay; readonly until: CalendarDay } {
  const months = KEEPING_THRESHOLDS.consentMonths.value;
  const ends = kinds.map((kind) => {
    const standing = consentStanding(consents, kind, asked);
    return standing.kind === "given" ? standing.until : asked.day;
  });
  let first: CalendarDay | null = null;
  for (const end of ends) if (end !== null && (first === null || end < first)) first = end;
  const goesOn = first !== null && first > asked.day && first <= lastDay(asked.day, months);
  const from = goesOn && first !== null ? dayFromNumber(dayNumber(first) + 1) : asked.day;
  return { from, until: lastDay(from, months) };
}
