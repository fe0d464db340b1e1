import { chiSquareQuantile } from "./chi-square-distribution";
import { compensatedDot } from "./compensated-dot";
import { compensatedSum } from "./compensated-sum";
import { type Outcome, ok, tooFew } from "./outcome";
import { pairedTest } from "./paired-test";
import { requireFinite } from "./require-finite";
import { requireProbability } from "./require-probability";
import type { MeanDifference } from "./welch-test";

/** How far one of two repeats strays, from the differences of pairs, in the unit of the values. */
export interface TypicalError {
  /** Pairs in all. */
  readonly pairs: number;
  /** Mean of all differences, held against 0; too-few where all differences are equal. */
  readonly bias: Outcome<MeanDifference>;
  /** Each list's own bias taken out: sqrt(sum (d - bias)² / (2 degrees)). */
  readonly typical: number;
  /** Its interval. */
  readonly low: number;
  readonly high: number;
  /** Pairs less lists. */
  readonly degrees: number;
  /** Nothing taken out: sqrt(sum d² / (2 pairs)). */
  readonly whole: number;
}

/**
 * Typical error of a repeat, with its chi-square interval, and the whole error with the bias left in.
 *
 * `lists`: differences, second less first, one list for each source that may have a bias of its own; any sizes, any order, one
 * unit; a list of one pair tells of the whole error alone. `confidence`: of the intervals, 0.95 for 95 of 100. No list with two
 * pairs: too-few, counting the pairs of the longest (2 needed). All deviations 0: too-few, counting lists with two different
 * differences (1 needed): an error of 0 can't be told from rounding. Bad input: NaN, infinity or a confidence outside 0 to 1
 * throws a RangeError. Assumes normal, independent differences of one spread; both repeats err alike.
 *
 * Source: Hopkins, W.G. (2000), Sports Medicine 30, 1-15; Bland, J.M. & Altman, D.G. (1986), Lancet i, 307-310.
 */
export function typicalError(lists: readonly (readonly number[])[], confidence: number): Outcome<TypicalError> {
  requireProbability(confidence, "confidence");
  lists.forEach((list, index) => {
    requireFinite(list, `lists[${index}]`);
  });
  const longest = lists.reduce((length, list) => Math.max(length, list.length), 0);
  if (longest < 2) return tooFew(longest, 2);
  if (lists.every((list) => list.every((value) => value === list[0]))) return tooFew(0, 1);
  const all = lists.flat();
  const deviations = lists.flatMap((list) => {
    const mean = list.length === 0 ? 0 : compensatedSum([...list]) / list.length;
    return list.map((value) => value - mean);
  });
  const degrees = lists.reduce((sum, list) => sum + Math.max(0, list.length - 1), 0);
  const squares = compensatedDot(deviations, deviations) / 2;
  const tail = (1 - confidence) / 2;
  return ok({
    pairs: all.length,
    bias: pairedTest(all, confidence),
    typical: Math.sqrt(squares / degrees),
    low: Math.sqrt(squares / chiSquareQuantile(1 - tail, degrees)),
    high: Math.sqrt(squares / chiSquareQuantile(tail, degrees)),
    degrees,
    whole: Math.sqrt(compensatedDot(all, all) / (2 * all.length)),
  });
}
