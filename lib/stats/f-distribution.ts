import cdf from "@stdlib/stats-base-dists-f-cdf";
import quantile from "@stdlib/stats-base-dists-f-quantile";
import { requirePositive } from "./require-positive";
import { requireProbability } from "./require-probability";

/**
 * Chance that an F number with `upper` and `lower` degrees of freedom is at most `x`.
 *
 * `x`: 0 or more, no unit; `upper`, `lower`: degrees of the mean squares above and below the line, above 0.
 * Result between 0 and 1, about 12 digits in the lower tail. Bad input: a negative x, NaN, or degrees that aren't above 0
 * and finite, throws a RangeError.
 *
 * Source: library of record (incomplete beta function), checked against 40-digit arithmetic.
 */
export function fCdf(x: number, upper: number, lower: number): number {
  requirePositive(upper, "upper");
  requirePositive(lower, "lower");
  if (!(x >= 0)) throw new RangeError(`x must be 0 or more, got ${x}`);
  if (x === Number.POSITIVE_INFINITY) return 1;
  return cdf(x, upper, lower);
}

/**
 * Chance that an F number with `upper` and `lower` degrees of freedom is above `x`.
 *
 * Taken as the lower tail of the reciprocal with the degrees exchanged, because 1 - cdf loses a small tail.
 * Arguments, result and bad input as `fCdf`.
 */
export function fUpperTail(x: number, upper: number, lower: number): number {
  if (!(x >= 0)) throw new RangeError(`x must be 0 or more, got ${x}`);
  return fCdf(1 / x, lower, upper);
}

/**
 * The point below which an F number with `upper` and `lower` degrees of freedom falls with chance `p`.
 *
 * `p`: strictly between 0 and 1. Result 0 or more, no unit, about 14 digits. Bad input throws a RangeError. For the
 * far upper tail take one over the quantile of the tail with the degrees exchanged.
 *
 * Source: library of record, checked against 40-digit arithmetic.
 */
export function fQuantile(p: number, upper: number, lower: number): number {
  requireProbability(p, "p");
  requirePositive(upper, "upper");
  requirePositive(lower, "lower");
  return quantile(p, upper, lower);
}
