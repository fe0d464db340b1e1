import type { RereadLevel, RereadPair } from "@/lib/domain/reread";
import { type Outcome, ok, tooFew } from "@/lib/stats/outcome";
import { readingStep } from "@/lib/stats/reading-step";
import { shrunkenVariance } from "@/lib/stats/shrunken-variance";
import { type TypicalError, typicalError } from "@/lib/stats/typical-error";
import { READER_ERROR_THRESHOLDS as T } from "./reader-error-thresholds";
import { type ComparedReaders, readerOffset } from "./reader-offset";

/** The re-reads of one reader at one level. */
export interface OwnError {
  readonly reader: string;
  readonly pairs: number;
  readonly error: Outcome<TypicalError>;
  /** Whole error drawn toward that of all readers, in the unit; of level (b) alone, null elsewhere. */
  readonly shrunken: number | null;
}

/** The re-reads of one level, of all readers together and of each. */
export interface LevelError {
  readonly level: RereadLevel;
  readonly pairs: number;
  /** Each reader's own bias taken out. */
  readonly pooled: Outcome<TypicalError>;
  /** By name. */
  readonly readers: readonly OwnError[];
}

/** What re-reads say of one fundamental; sds in its unit. */
export interface ReaderError {
  readonly sameStill: LevelError;
  readonly sameFilm: LevelError;
  /** Whole error that takes the place of the customary one; too-few counts pairs of level (b). */
  readonly readerSd: Outcome<number>;
  /** By the two names. */
  readonly compared: readonly ComparedReaders[];
  /** Sd of readers' offsets that takes the place of the customary one; too-few counts swings that two readers share. */
  readonly offsetSd: Outcome<number>;
}

const square = (value: number): number => value * value;
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Whole squares of one reading: half the mean square of the differences. */
function wholeVariance(pairs: readonly RereadPair[]): number {
  return pairs.length === 0 ? 0 : mean(pairs.map((pair) => square(pair.again - pair.first))) / 2;
}

/** What rounding alone leaves: nothing that was measured is surer. */
function leastSd(pairs: readonly RereadPair[]): number {
  const step = readingStep(pairs.flatMap((pair) => [pair.first, pair.again]));
  return Math.max(step, T.finestStep.value) / Math.sqrt(12);
}

function levelError(
  level: RereadLevel,
  pairs: readonly RereadPair[],
  shrunkenOf: ((own: readonly RereadPair[]) => number) | null,
): LevelError {
  const names = [...new Set(pairs.map((pair) => pair.reader))].sort();
  const lists = names.map((name) => pairs.filter((pair) => pair.reader === name));
  const differences = (own: readonly RereadPair[]): number[] => own.map((pair) => pair.again - pair.first);
  return {
    level,
    pairs: pairs.length,
    pooled: typicalError(lists.map(differences), T.confidence.value),
    readers: lists.map((own, at) => ({
      reader: names[at] as string,
      pairs: own.length,
      error: typicalError([differences(own)], T.confidence.value),
      shrunken: shrunkenOf === null ? null : shrunkenOf(own),
    })),
  };
}

/**
 * What blind re-reads of one fundamental say of its readers.
 *
 * Level (b), the film opened again with frame and points chosen anew, is the one that counts; level (a) is shown for what it
 * is. Typical error: each reader's own bias taken out. What a verdict takes is the whole error, bias left in,
 * W² = sum d² / 2n over all readers, drawn toward the customary sd s: (n0 s² + n W²) / (n0 + n); a reader's own toward that in
 * turn. It is never less than rounding alone leaves, r / sqrt 12.
 *
 * @param pairs of one fundamental, any order; one a swing, level, first reader and reader
 * @param customary the fundamental's sd of one reading until it is measured, in the unit; above 0
 * @param customaryOffset sd of readers' offsets in units of the sd of one reading, until two readers have been compared
 * @returns fewer pairs than needed: too-few in place of what a verdict takes; the customary figure stands
 * @throws RangeError on values that no checked reading holds
 *
 * Sources: Hopkins 2000 (typical error); Smyth 2004 (shrinkage); Bland and Altman 1986 (two readers).
 */
export function readerError(pairs: readonly RereadPair[], customary: number, customaryOffset: number): ReaderError {
  const own = (level: RereadLevel) => pairs.filter((pair) => pair.level === level && pair.reader === pair.firstReader);
  const sameFilm = own("b");
  const floor = square(leastSd(sameFilm));
  const drawn = (read: readonly RereadPair[], toward: number, worth: number): number =>
    Math.max(
      floor,
      shrunkenVariance({ variance: wholeVariance(read), degrees: read.length }, { variance: toward, degrees: worth }),
    );
  const pooled = drawn(sameFilm, square(customary), T.customaryWorth.value);
  const enough = sameFilm.length >= T.pairsNeeded.value;
  const readerSd = enough ? ok(Math.sqrt(pooled)) : tooFew(sameFilm.length, T.pairsNeeded.value);
  const between = pairs.filter((pair) => pair.level === "b" && pair.reader !== pair.firstReader);
  const standing = readerSd.kind === "ok" ? readerSd.value : customary;
  return {
    sameStill: levelError("a", own("a"), null),
    sameFilm: levelError("b", sameFilm, (read) => Math.sqrt(drawn(read, pooled, T.pooledWorth.value))),
    readerSd,
    ...readerOffset(between, customaryOffset * standing),
  };
}
