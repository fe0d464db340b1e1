import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";

interface End {
  readonly end: string | null;
  readonly endWhy: string | null;
}

/**
 * The end of a given drill that was taken back: the day before its first, so that it ran on no day. The table has no column
 * of its own for that; the end that it had, and why, are kept in place of the reason, so that putting back loses nothing.
 */
export function closeTakenBack({ start, end, endWhy }: End & { readonly start: string }): End {
  return { end: dayFromNumber(dayNumber(start) - 1), endWhy: JSON.stringify({ end, endWhy }) };
}

/** The end that a drill had before it was taken back; a row that another hand wrote without it had none. */
export function openTakenBack(kept: string | null): End {
  if (kept === null || !kept.startsWith('{"end":')) return { end: null, endWhy: kept };
  return JSON.parse(kept) as End;
}
