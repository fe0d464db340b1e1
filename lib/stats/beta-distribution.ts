import cdf from "@stdlib/stats-base-dists-beta-cdf";
import quantile from "@stdlib/stats-base-dists-beta-quantile";
import { requirePositive } from "./require-positive";
import { requireProbability } from "./require-probability";

/**
 * Chance that a beta number with shapes `a` and `b` is at most `x`.
 *
 * `x`: 0 to 1; `a`, `b`: above 0; none has a unit. Result between 0 and 1, about 13 digits in the lower tail. With
 * a = n - k, b = k + 1 and x = 1 - p it is the chance of at most k successes in n. Bad input: x outside, NaN, or
 * shapes that aren't above 0 and finite, throws a RangeError.
 *
 * Source: library of record (incomplete beta function), checked against 40-digit arithmetic.
 */
export function betaCdf(x: number, a: number, b: number): number {
  requirePositive(a, "a");
  requirePositive(b, "b");
  if (!(x >= 0 && x <= 1)) throw new RangeError(`x must lie in 0 to 1, got ${x}`);
  return cdf(x, a, b);
}

/**
 * Chance that a beta number with shapes `a` and `b` is above `x`.
 *
 * Taken as the lower tail at 1 - x with the shapes exchanged, because 1 - cdf loses a small tail. Arguments,
 * result and bad input as `betaCdf`.
 */
export function betaUpperTail(x: number, a: number, b: number): number {
  return betaCdf(1 - x, b, a);
}

/**
 * The point below which a beta number with shapes `a` and `b` falls with chance `p`.
 *
 * `p`: strictly between 0 and 1; `a`, `b`: above 0. Result 0 to 1, about 14 digits. Bad input throws a RangeError.
 *
 * Source: library of record, checked against 40-digit arithmetic.
 */
export function betaQuantile(p: number, a: number, b: number): number {
  requireProbability(p, "p");
  requirePositive(a, "a");
  requirePositive(b, "b");
  return quantile(p, a, b);
}
