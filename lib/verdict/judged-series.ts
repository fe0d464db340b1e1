import { dayNumber } from "@/lib/domain/calendar-day";
import type { JudgedSession, JudgedTrack } from "@/lib/domain/judged-track";
import type { Series } from "@/lib/stats/series";
import type { Policy } from "./policy";

/** A track as the engine takes it in, and its sessions in the same order. */
export interface JudgedSeries {
  /** In date order; sessions of one day in the order given. Indices in every result are positions here. */
  readonly sessions: readonly JudgedSession[];
  /** One group a session, same order. */
  readonly series: Series;
}

/**
 * Turns a judged track into the engine's series: dates to day numbers, placements and readers to labels.
 *
 * @param track values in the track's unit; no session at all gives a series without groups
 * @throws RangeError on a date that doesn't exist
 */
export function judgedSeries(track: JudgedTrack, policy: Policy): JudgedSeries {
  const dated = track.sessions.map((session, given) => ({ session, given, day: dayNumber(session.date) }));
  dated.sort((a, b) => a.day - b.day || a.given - b.given);
  const readingErrorSd = track.readerSd ?? policy.readerSd;
  return {
    sessions: dated.map((entry) => entry.session),
    series: {
      groups: dated.map(({ session, day }) => ({
        day,
        values: session.swings,
        sharedErrorSd: session.captureSd,
        sharedErrorLabel: session.captureSetup ?? null,
        offsetLabel: session.reader ?? null,
        used: session.use !== false && session.swings.length > 0,
      })),
      readingErrorSd,
      offsetSd: track.readerOffsetSd ?? policy.readerOffset * readingErrorSd,
      start: track.startLevel ?? null,
    },
  };
}

/**
 * The sessions of a series from one index up to and including another.
 *
 * The belief about the level before the first session goes only with a stretch that begins there.
 */
export function stretchOf(series: Series, first: number, last: number): Series {
  return {
    ...series,
    groups: series.groups.slice(first, last + 1),
    start: first === 0 ? series.start : null,
  };
}
