import { noncentralTQuantile } from "./noncentral-t-distribution";
import { normalQuantile } from "./normal-distribution";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireProbability } from "./require-probability";

/**
 * Factor k so that mean + k sd lies above a share of a normal population, with a given confidence.
 *
 * `count`: values behind the mean and the sd (divisor count - 1), a whole number; `coverage`: the share, 0.9 for 90 of
 * 100; `confidence`: of how many such limits 0.95 would hold it. Result in sds; mean - k sd lies below the share in the
 * same way. Fewer than two values: too-few, counting values. Bad input: a count that isn't whole and 0 or more, a
 * coverage or confidence outside 0 to 1 throws a RangeError. Assumes independent values of one normal distribution.
 *
 * Source: Odeh, R.E. & Owen, D.B. (1980), Tables for Normal Tolerance Limits, Sampling Plans, and Screening: the
 * quantile of a noncentral t, exact; Natrella's closed form is not used.
 */
export function oneSidedToleranceFactor(count: number, coverage: number, confidence: number): Outcome<number> {
  if (!Number.isInteger(count) || count < 0) throw new RangeError(`count must be a whole number, got ${count}`);
  requireProbability(coverage, "coverage");
  requireProbability(confidence, "confidence");
  if (count < 2) return tooFew(count, 2);
  const root = Math.sqrt(count);
  return ok(noncentralTQuantile(confidence, count - 1, normalQuantile(coverage) * root) / root);
}
