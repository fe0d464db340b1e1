import { type Consent, type ConsentAsked, giverOf } from "./consent";
import { KEEPING_THRESHOLDS } from "./keeping-thresholds";
import { lastDay } from "./last-day";

/**
 * The consent to measure that somebody confirmed to hold on paper while a file came in: from the day of asking for a year, as
 * the word of whomever the birth year asks for.
 */
export function paperConsent(givenBy: string, asked: ConsentAsked): Consent {
  const until = lastDay(asked.day, KEEPING_THRESHOLDS.consentMonths.value);
  return { kind: "measure", givenBy, giverIs: giverOf(asked), from: asked.day, until, withdrawnOn: null };
}
