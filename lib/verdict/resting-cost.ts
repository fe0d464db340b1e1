import { type CalendarDay, daysBetween } from "@/lib/domain/calendar-day";
import { KEEP_THRESHOLDS } from "./keep-thresholds";

/** Days until a loss has two films that show it, at a student's own rhythm. */
export interface RestingCost {
  /** Read in every film. */
  readonly everyFilm: number;
  /** Read in every third film. */
  readonly resting: number;
}

/**
 * What it costs to let an owned fundamental rest: how much later an early sign can come.
 *
 * Both counts are films to be read times the median of days between films, so a rhythm, no promise; not read at all, no sign
 * comes.
 *
 * @param days of the student's films, oldest first; several on one day count once
 * @returns null: fewer than two days, so no rhythm
 */
export function restingCost(days: readonly CalendarDay[]): RestingCost | null {
  const own = [...new Set(days)];
  const gaps = own.slice(1).map((day, at) => daysBetween(own[at] as CalendarDay, day));
  if (gaps.length === 0) return null;
  const sorted = gaps.sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  const median =
    sorted.length % 2 === 1
      ? (sorted[middle] as number)
      : ((sorted[middle - 1] as number) + (sorted[middle] as number)) / 2;
  const { signFilms, restEvery } = KEEP_THRESHOLDS;
  return {
    everyFilm: Math.round(signFilms.value * median),
    resting: Math.round(signFilms.value * restEvery.value * median),
  };
}
