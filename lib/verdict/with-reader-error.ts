import type { Fundamental } from "@/lib/domain/fundamental";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { MeasuredReaderError } from "@/lib/domain/reread";
import { type ReaderErrorInForce, readerErrorInForce } from "./reader-error-in-force";

/**
 * A judged track with the reader's error of each of its looks.
 *
 * A look is held by what was measured until its session's day, and by the customary figure before: a new fit changes nothing
 * that was said of films before its first day. One error serves the whole series of a look. Where all looks have one, the
 * track alone bears it.
 *
 * @param track its sessions, in date order; none: the customary figure
 * @param fits of the academy, any order
 */
export function withReaderError(
  track: Omit<JudgedTrack, "readerSd" | "readerOffsetSd">,
  fundamental: Fundamental,
  fits: readonly MeasuredReaderError[],
): JudgedTrack {
  const given = ({ readerSd, offsetSd }: ReaderErrorInForce) =>
    offsetSd === null ? { readerSd } : { readerSd, readerOffsetSd: offsetSd };
  const of = (day: string): ReaderErrorInForce => readerErrorInForce(fits, fundamental, day);
  const last = track.sessions.at(-1)?.date;
  if (last === undefined || (fits.length === 0 && fundamental.earlier === undefined))
    return { ...track, readerSd: fundamental.readerSd };
  const latest = of(last);
  return {
    ...track,
    ...given(latest),
    sessions: track.sessions.map((session) => {
      const then = of(session.date);
      return then.readerSd === latest.readerSd && then.offsetSd === latest.offsetSd
        ? session
        : { ...session, ...given(then) };
    }),
  };
}
