import cdf from "@stdlib/stats-base-dists-t-cdf";
import quantile from "@stdlib/stats-base-dists-t-quantile";
import { requirePositive } from "./require-positive";
import { requireProbability } from "./require-probability";

/**
 * Chance that a t number with `degrees` of freedom is at most `x`.
 *
 * `x`: one number, no unit; `degrees`: above 0, whole or not. Result between 0 and 1, about 14 digits in the lower
 * tail down to 1e-300. Bad input: NaN, or degrees that aren't above 0 and finite, throws a RangeError.
 *
 * Source: library of record (incomplete beta function), checked against 40-digit arithmetic.
 */
export function tCdf(x: number, degrees: number): number {
  requirePositive(degrees, "degrees");
  if (Number.isNaN(x)) throw new RangeError(`tCdf needs a number, got ${x}`);
  return cdf(x, degrees);
}

/**
 * Chance that a t number with `degrees` of freedom is above `x`.
 *
 * Taken as the lower tail at -x, because the distribution is symmetric and 1 - cdf loses a small tail.
 * Arguments, result and bad input as `tCdf`.
 */
export function tUpperTail(x: number, degrees: number): number {
  return tCdf(-x, degrees);
}

/**
 * The point below which a t number with `degrees` of freedom falls with chance `p`.
 *
 * `p`: strictly between 0 and 1; `degrees`: above 0. Result without unit, about 14 digits. Bad input throws a
 * RangeError. For a point in the far upper tail take minus the quantile of the tail.
 *
 * Source: library of record, checked against 40-digit arithmetic.
 */
export function tQuantile(p: number, degrees: number): number {
  requireProbability(p, "p");
  requirePositive(degrees, "degrees");
  return quantile(p, degrees);
}
