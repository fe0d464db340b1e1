import { type CalendarDay, dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { MeasuredReaderError, RereadPair } from "@/lib/domain/reread";
import { POLICY } from "./policy";
import { readerError } from "./reader-error";
import { READER_ERROR_VERSION } from "./reader-error-thresholds";

/** A fit that has no number yet. */
export type NewReaderError = Omit<MeasuredReaderError, "number">;

/**
 * The reader's error of one fundamental as verdicts are to take it from now on; null: too little was read again, or it is
 * what the newest fit says already.
 *
 * It holds from the day after `today`, so that a look that was said today stays as it was said. Where readers were compared
 * but too few pairs tell of one reader, the customary sd goes with the measured offset.
 *
 * @param pairs of the fundamental, of finished draws, any order
 * @param newest the fit with the highest number; undefined: none
 */
export function fitReaderError(
  pairs: readonly RereadPair[],
  fundamental: Fundamental,
  newest: MeasuredReaderError | undefined,
  today: CalendarDay,
): NewReaderError | null {
  const found = readerError(pairs, fundamental.readerSd, POLICY.readerOffset);
  if (found.readerSd.kind !== "ok" && found.offsetSd.kind !== "ok") return null;
  const readerSd = found.readerSd.kind === "ok" ? found.readerSd.value : fundamental.readerSd;
  const offsetSd = found.offsetSd.kind === "ok" ? found.offsetSd.value : null;
  if (newest && newest.readerSd === readerSd && newest.offsetSd === offsetSd) return null;
  return {
    fundamentalId: fundamental.id,
    fromDay: dayFromNumber(dayNumber(today) + 1),
    readerSd,
    offsetSd,
    pairs: found.sameFilm.pairs,
    shared: Math.max(0, ...found.compared.map((each) => each.swings)),
    version: READER_ERROR_VERSION,
  };
}
