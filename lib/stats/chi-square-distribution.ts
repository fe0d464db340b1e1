import cdf from "@stdlib/stats-base-dists-chisquare-cdf";
import quantile from "@stdlib/stats-base-dists-chisquare-quantile";
import { logGamma } from "./log-gamma";
import { requirePositive } from "./require-positive";
import { requireProbability } from "./require-probability";

/** The continued fraction stops when a further term changes it by less than this share. */
const SETTLED = 1e-16;

/** More terms than any x above degrees + 2 needs, up to a million degrees. */
const MOST_TERMS = 100_000;

/**
 * Chance that a chi-square number with `degrees` of freedom is at most `x`.
 *
 * `x`: 0 or more, no unit; `degrees`: above 0. Result between 0 and 1, about 14 digits in the lower tail. Bad
 * input: a negative x, NaN, or degrees that aren't above 0 and finite, throws a RangeError.
 *
 * Source: library of record (incomplete gamma function), checked against 40-digit arithmetic.
 */
export function chiSquareCdf(x: number, degrees: number): number {
  requirePositive(degrees, "degrees");
  if (!(x >= 0)) throw new RangeError(`x must be 0 or more, got ${x}`);
  return cdf(x, degrees);
}

/**
 * Chance that a chi-square number with `degrees` of freedom is above `x`.
 *
 * Where x is above degrees + 2 the tail is worked out itself, by a continued fraction: the library has
 * only the cdf, and 1 - cdf says 0 from about 1e-16. Below, 1 - cdf keeps its digits. Arguments and bad
 * input as `chiSquareCdf`. Result between 0 and 1, about 13 digits.
 *
 * Source: Abramowitz, M. & Stegun, I.A. (1964), 6.5.31, evaluated after Lentz, W.J. (1976), Applied Optics 15, 668-671.
 */
export function chiSquareUpperTail(x: number, degrees: number): number {
  const below = chiSquareCdf(x, degrees);
  if (x <= degrees + 2 || x === Number.POSITIVE_INFINITY) return 1 - below;
  const a = degrees / 2;
  const half = x / 2;
  let denominator = half + 1 - a;
  let ratio = Number.MAX_VALUE;
  let inverse = 1 / denominator;
  let fraction = inverse;
  for (let term = 1; term <= MOST_TERMS; term++) {
    const numerator = -term * (term - a);
    denominator += 2;
    inverse = 1 / (numerator * inverse + denominator);
    ratio = denominator + numerator / ratio;
    fraction *= inverse * ratio;
    if (Math.abs(inverse * ratio - 1) < SETTLED) break;
  }
  return Math.exp(a * Math.log(half) - half - logGamma(a)) * fraction;
}

/**
 * The point below which a chi-square number with `degrees` of freedom falls with chance `p`.
 *
 * `p`: strictly between 0 and 1; `degrees`: above 0. Result 0 or more, no unit, about 14 digits for p from 1e-15
 * to 1 - 1e-15. Bad input throws a RangeError.
 *
 * Source: library of record, checked against 40-digit arithmetic.
 */
export function chiSquareQuantile(p: number, degrees: number): number {
  requireProbability(p, "p");
  requirePositive(degrees, "degrees");
  return quantile(p, degrees);
}
