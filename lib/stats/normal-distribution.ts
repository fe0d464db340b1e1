import cdf from "@stdlib/stats-base-dists-normal-cdf";
import quantile from "@stdlib/stats-base-dists-normal-quantile";
import { requireProbability } from "./require-probability";

/** Below this the library's quantile loses digits (it works from 2p - 1), so it is only the start. */
const LIBRARY_QUANTILE_FROM = 0.01;

/** Newton's method on the logarithm doubles its digits each time; six rounds reach a double from any start used. */
const ROUNDS = 8;

/**
 * Chance that a standard normal number is at most `x`.
 *
 * `x`: one number in standard deviations, infinity allowed. Result between 0 and 1, about 13 digits down to
 * 1e-300. Bad input: NaN throws a RangeError. Below about -38.5 the result is 0: no double is smaller.
 *
 * Source: library of record, checked against 40-digit arithmetic.
 */
export function normalCdf(x: number): number {
  if (Number.isNaN(x)) throw new RangeError(`normalCdf needs a number, got ${x}`);
  return cdf(x, 0, 1);
}

/**
 * Chance that a standard normal number is above `x`.
 *
 * `x`: one number in standard deviations. Taken as the lower tail at -x, so that a tail of 1e-80 keeps its
 * digits where 1 - cdf would say 0. Result and bad input as `normalCdf`.
 */
export function normalUpperTail(x: number): number {
  return normalCdf(-x);
}

/**
 * The point below which a standard normal number falls with chance `p`.
 *
 * `p`: strictly between 0 and 1. Result in standard deviations, about 15 digits, down to p = 1e-300. Bad
 * input: p of 0, 1, outside or NaN throws a RangeError. For a point in the far upper tail take minus the
 * quantile of the tail: p near 1 no longer holds the digits. In the tails the start sqrt(-2 log p), or the
 * library's value, is bettered by Newton's method on log cdf.
 *
 * Source: Newton's method; tail start after Abramowitz, M. & Stegun, I.A. (1964), 26.2.12.
 */
export function normalQuantile(p: number): number {
  requireProbability(p, "p");
  if (p > 0.5) return -normalQuantile(1 - p);
  if (p >= LIBRARY_QUANTILE_FROM) return quantile(p, 0, 1);
  const target = Math.log(p);
  const far = Math.sqrt(-2 * target);
  let z = -Math.sqrt(-2 * (target + Math.log(far * Math.sqrt(2 * Math.PI))));
  for (let round = 0; round < ROUNDS; round++) {
    const below = normalCdf(z);
    const hazard = Math.exp(-0.5 * z * z - Math.log(below)) / Math.sqrt(2 * Math.PI);
    z -= (Math.log(below) - target) / hazard;
  }
  return z;
}
