import type { CalendarDay } from "./calendar-day";
import { goalSeries, type RecordedBand } from "./goal-band";

const seriesOf = (band: RecordedBand): string => `${band.fundamentalId} ${band.clubGroup} ${goalSeries(band)}`;

/**
 * Marks the bands that were planned and never begin: another of their series was entered after them, before their first
 * day, and begins earlier. One that has begun is never replaced: it keeps its days.
 *
 * @param bands any order, which stays
 * @param dayOf the academy's day of an instant
 */
export function markReplaced<T extends RecordedBand>(
  bands: readonly T[],
  dayOf: (instant: string) => CalendarDay,
): readonly T[] {
  return bands.map((band) => {
    const replaces = (other: RecordedBand): boolean =>
      other.from < band.from &&
      other.createdAt > band.createdAt &&
      dayOf(other.createdAt) < band.from &&
      seriesOf(other) === seriesOf(band);
    return bands.some(replaces) ? { ...band, replaced: true as const } : band;
  });
}
