import { dayNumber } from "@/lib/domain/calendar-day";
import type { JudgedSession, JudgedTrack } from "@/lib/domain/judged-track";
import type { Series } from "@/lib/stats/series";
import type { Policy } from "./policy";

/** A track as the engine takes it in, and its sessions in the same order. */
export interface JudgedSeries {
  /** In date order; sessions of one day in the order given. Indices in every result are positions here. */
  readonly sessions: readonly JudgedSession[];
  /** One group a session, same order; the reader's error is that of the last look. */
  readonly series: Series;
  /** The reader's error by which the look after each session is said, same order, in the unit. */
  readonly readerErrors: readonly Pick<Series, "readingErrorSd" | "offsetSd">[];
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
  const errorOf = (given: Pick<JudgedTrack, "readerSd" | "readerOffsetSd">) => {
    const readingErrorSd = given.readerSd ?? policy.readerSd;
    return { readingErrorSd, offsetSd: given.readerOffsetSd ?? policy.readerOffset * readingErrorSd };
  };
  const standing = errorOf(track);
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
      ...standing,
      start: track.startLevel ?? null,
    },
    readerErrors: dated.map(({ session }) => (session.readerSd === undefined ? standing : errorOf(session))),
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

/** The same as a look has it: its sessions from the first one on, with the reader's error in force at the look. */
export function stretchAt({ series, readerErrors }: JudgedSeries, first: number, look: number, last = look): Series {
  return { ...stretchOf(series, first, last), ...readerErrors[look] };
}
