import { logGamma } from "./log-gamma";
import { normalCdf } from "./normal-distribution";
import { requirePositive } from "./require-positive";
import { requireProbability } from "./require-probability";

/** The sum stops where its terms are below this share of the largest one. */
const NEGLIGIBLE = 1e-20;

/** Halving the step stops when the sum changes by less than this share: the next change would be its square or less. */
const SETTLED = 1e-9;

/** Halvings at most; each doubles the points, and the error falls faster than any power of the step. */
const HALVINGS = 12;

/** From here on two terms of Stirling's series leave an error below 1e-13. */
const STIRLING_FROM = 100;

/** Halvings of a bracket: more than a double can tell apart. */
const BISECTIONS = 200;

/**
 * Chance that a noncentral t number, (Z + centre) over the root of chi-square / degrees, is at most `x`.
 *
 * `x`: any number, infinity allowed; `degrees`: above 0, whole or not; `centre`: the noncentrality, any finite number;
 * none has a unit. Result between 0 and 1, about 12 digits also in the lower tail. Bad input: NaN, an endless
 * centre, or degrees that aren't above 0 and finite, throws a RangeError. Works out the mean of the normal cdf at
 * x s - centre over the spread s, on the scale of log s: every term is positive, so a small tail keeps its digits,
 * and equal steps lose next to nothing on a smooth hump.
 *
 * Source: Johnson, N.L., Kotz, S. & Balakrishnan, N. (1995), Continuous Univariate Distributions 2, 31.2; equal steps
 * after Trefethen, L.N. & Weideman, J.A.C. (2014), SIAM Review 56, 385-458.
 */
export function noncentralTCdf(x: number, degrees: number, centre: number): number {
  requirePositive(degrees, "degrees");
  if (!Number.isFinite(centre)) throw new RangeError(`centre must be a finite number, got ${centre}`);
  if (Number.isNaN(x)) throw new RangeError(`noncentralTCdf needs a number, got ${x}`);
  if (!Number.isFinite(x)) return x > 0 ? 1 : 0;
  if (x === 0) return normalCdf(-centre);

  const constant = logPeak(degrees / 2);
  const term = (u: number): number =>
    Math.exp(constant + degrees * (u - Math.expm1(2 * u) / 2)) * normalCdf(x * Math.exp(u) - centre);
  const top = summit(x, degrees, centre);
  const step = Math.min(1, 1 / Math.sqrt(2 * degrees * Math.exp(2 * Math.max(0, top)) + centre * centre));
  const floor = NEGLIGIBLE * term(top);
  if (floor === 0) return 0;
  let from = top - step;
  while (term(from) > floor) from -= step;
  let to = top + step;
  while (term(to) > floor) to += step;

  let points = Math.ceil((to - from) / step);
  let width = (to - from) / points;
  let sum = 0;
  for (let i = 0; i <= points; i++) sum += term(from + i * width);
  for (let round = 0; round < HALVINGS; round++) {
    let between = 0;
    for (let i = 0; i < points; i++) between += term(from + (i + 0.5) * width);
    const change = Math.abs(between - sum);
    sum += between;
    points *= 2;
    width /= 2;
    if (change <= SETTLED * sum) break;
  }
  return Math.min(1, sum * width);
}

/**
 * Chance that a noncentral t number is above `x`; the lower tail of the mirrored one, so that a small tail keeps its
 * digits. Arguments, result and bad input as `noncentralTCdf`.
 */
export function noncentralTUpperTail(x: number, degrees: number, centre: number): number {
  return noncentralTCdf(-x, degrees, -centre);
}

/**
 * The point below which a noncentral t number falls with chance `p`.
 *
 * `p`: strictly between 0 and 1; `degrees`, `centre`: as in `noncentralTCdf`. Result without unit, about 12 digits. Bad
 * input throws a RangeError. Found by halving a bracket; above the median on the upper tail.
 *
 * Source: bisection on `noncentralTCdf`.
 */
export function noncentralTQuantile(p: number, degrees: number, centre: number): number {
  requireProbability(p, "p");
  const isBelow = (x: number): boolean =>
    p <= 0.5 ? noncentralTCdf(x, degrees, centre) < p : noncentralTUpperTail(x, degrees, centre) > 1 - p;
  let reach = 1;
  while (!isBelow(centre - reach)) reach *= 2;
  let low = centre - reach;
  reach = 1;
  while (isBelow(centre + reach)) reach *= 2;
  let high = centre + reach;
  for (let round = 0; round < BISECTIONS; round++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (isBelow(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Log density of log s at s = 1, by half the degrees; by Stirling's series where the difference of logs would lose digits. */
function logPeak(half: number): number {
  if (half < STIRLING_FROM) return Math.LN2 + half * Math.log(half) - half - logGamma(half);
  return Math.LN2 + 0.5 * Math.log(half / (2 * Math.PI)) - 1 / (12 * half) + 1 / (360 * half ** 3);
}

/** Log of the spread at which the integrand is largest: where its slope changes sign. */
function summit(x: number, degrees: number, centre: number): number {
  const slope = (u: number): number => {
    const spread = Math.exp(u);
    return degrees * (1 - spread * spread) + x * spread * hazard(x * spread - centre);
  };
  let low = -1;
  while (slope(low) < 0) low *= 2;
  let high = 1;
  while (slope(high) > 0) high *= 2;
  for (let round = 0; round < 40; round++) {
    const middle = (low + high) / 2;
    if (slope(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Normal density over cdf; far below 0 it nears -z. */
function hazard(z: number): number {
  return z < -30 ? -z - 1 / z : Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI) / normalCdf(z);
}
