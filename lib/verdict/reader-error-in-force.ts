import type { CalendarDay } from "@/lib/domain/calendar-day";
import type { Fundamental } from "@/lib/domain/fundamental";
import { fundamentalOn } from "@/lib/domain/fundamental-on";
import type { MeasuredReaderError } from "@/lib/domain/reread";

/** The sds by which a day's look is held, in the fundamental's unit. */
export interface ReaderErrorInForce {
  readonly readerSd: number;
  /** Null: not measured; the policy's multiple of `readerSd` stands for it. */
  readonly offsetSd: number | null;
  /** The fit that it comes from; null: the customary figure of the fundamental. */
  readonly number: number | null;
}

function measuredOn(
  fits: readonly MeasuredReaderError[],
  fundamentalId: string,
  day: CalendarDay,
): MeasuredReaderError | null {
  let latest: MeasuredReaderError | null = null;
  for (const fit of fits)
    if (fit.fundamentalId === fundamentalId && fit.fromDay <= day && (latest === null || fit.number > latest.number))
      latest = fit;
  return latest;
}

/**
 * The reader's error in force on a day: the newest fit whose first day has come, else the fundamental's customary figure.
 *
 * A difference of two others that nobody has read again itself has the root of the sum of their squares, once both are
 * measured: two readings of one swing err independently.
 *
 * @param fits of the academy, any order
 */
export function readerErrorInForce(
  fits: readonly MeasuredReaderError[],
  fundamental: Fundamental,
  day: CalendarDay,
): ReaderErrorInForce {
  const own = measuredOn(fits, fundamental.id, day);
  if (own !== null) return { readerSd: own.readerSd, offsetSd: own.offsetSd, number: own.number };
  const parts = fundamental.derivedFrom?.map((id) => measuredOn(fits, id, day)) ?? [];
  const [one, other] = parts;
  if (!one || !other) return { readerSd: fundamentalOn(fundamental, day).readerSd, offsetSd: null, number: null };
  return {
    readerSd: Math.hypot(one.readerSd, other.readerSd),
    offsetSd: one.offsetSd === null || other.offsetSd === null ? null : Math.hypot(one.offsetSd, other.offsetSd),
    number: Math.max(one.number, other.number),
  };
}
