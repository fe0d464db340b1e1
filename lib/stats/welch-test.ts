import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";
import { requireProbability } from "./require-probability";
import { tQuantile, tUpperTail } from "./t-distribution";
import { univariateSummary } from "./univariate-summary";

/** A difference of means with what a t test makes of it. */
export interface MeanDifference {
  /** In the unit of the values, as are its error and its ends. */
  readonly difference: number;
  readonly standardError: number;
  readonly low: number;
  readonly high: number;
  /** Difference over standard error. */
  readonly t: number;
  /** Whole or not. */
  readonly degrees: number;
  /** Two-sided chance of a |t| at least as large when the means are equal. */
  readonly p: number;
}

/**
 * Difference of two means, first less second, without assuming equal spreads.
 *
 * `first`, `second`: lists in one unit, any order, any lengths from 2; `confidence`: 0.95 for 95 of 100. A list of fewer than
 * two: too-few, counting values of the shorter. No spread in either: too-few, counting lists that hold two different values (1
 * needed). Bad input: NaN, infinity or a confidence outside 0 to 1 throws a RangeError. Assumes independent values, normal or
 * many; degrees of freedom after Satterthwaite.
 *
 * Source: Welch, B.L. (1947), Biometrika 34, 28-35; Satterthwaite, F.E. (1946), Biometrics Bulletin 2, 110-114.
 */
export function welchTest(
  first: readonly number[],
  second: readonly number[],
  confidence: number,
): Outcome<MeanDifference> {
  requireFinite(first, "first");
  requireFinite(second, "second");
  requireProbability(confidence, "confidence");
  const anchor = first[0] ?? 0;
  const [a, b] = [first, second].map((list) => univariateSummary(list.map((value) => value - anchor)));
  if (a?.kind !== "ok" || b?.kind !== "ok") return tooFew(Math.min(first.length, second.length), 2);
  if ([first, second].every((list) => list.every((value) => value === list[0]))) return tooFew(0, 1);
  const ofFirst = a.value.sd ** 2 / a.value.count;
  const ofSecond = b.value.sd ** 2 / b.value.count;
  const both = ofFirst + ofSecond;
  const difference = a.value.mean - b.value.mean;
  const standardError = Math.sqrt(both);
  const share = ofFirst / both;
  const degrees = 1 / (share ** 2 / (a.value.count - 1) + (1 - share) ** 2 / (b.value.count - 1));
  const reach = -tQuantile((1 - confidence) / 2, degrees) * standardError;
  const t = difference / standardError;
  return ok({
    difference,
    standardError,
    low: difference - reach,
    high: difference + reach,
    t,
    degrees,
    p: 2 * tUpperTail(Math.abs(t), degrees),
  });
}
