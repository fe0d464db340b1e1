import { chiSquareUpperTail } from "./chi-square-distribution";
import { normalCdf, normalQuantile } from "./normal-distribution";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireProbability } from "./require-probability";

/** Width of a step of the integral over the mean's error, in that error's sd; a smooth integrand leaves no error in a double. */
const STEP = 0.1;

/** The mean's error is followed this many of its sds out, where its density is below 1e-17 of the centre's. */
const FARTHEST = 9;

/** Halvings that take an interval to the last digit of a double. */
const HALVINGS = 60;

/**
 * Two-sided normal tolerance factor k, exact: mean - k sd to mean + k sd of `count` values holds at least a share `coverage` of
 * the population in a share `confidence` of samples.
 *
 * `count`: whole, 2 or more (else too-few, counting values); `coverage`, `confidence`: strictly between 0 and 1. Result
 * without unit, about 12 digits; the sd has divisor count - 1. Bad input: a count that isn't whole or is negative, or shares
 * outside 0 to 1, throws a RangeError. Assumes independent values of one normal population; heavy tails break it. Works by
 * the trapezoid rule over the error of the mean.
 *
 * Source: Wald, A. & Wolfowitz, J. (1946), Annals of Mathematical Statistics 17, 208-215; exact form after Odeh, R.E. & Owen, D.B.
 * (1980), Tables for Normal Tolerance Limits, Sampling Plans, and Screening.
 */
export function toleranceFactor(count: number, coverage: number, confidence: number): Outcome<number> {
  if (!Number.isInteger(count) || count < 0) throw new RangeError(`count must be a whole number, got ${count}`);
  requireProbability(coverage, "coverage");
  requireProbability(confidence, "confidence");
  if (count < 2) return tooFew(count, 2);
  const degrees = count - 1;
  const nodes = Array.from({ length: FARTHEST / STEP + 1 }, (_, i) => {
    const z = i * STEP;
    const density = (Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI)) * STEP;
    return { weight: i === 0 ? density : 2 * density, reach: reachOf(z / Math.sqrt(count), coverage) };
  });
  const confidenceOf = (k: number) =>
    nodes.reduce((sum, { weight, reach }) => sum + weight * chiSquareUpperTail(degrees * (reach / k) ** 2, degrees), 0);
  let high = 1;
  while (confidenceOf(high) < confidence) high *= 2;
  return ok(halved(0, high, (k) => confidenceOf(k) < confidence));
}

/** How far to go either way from a point `off` sds from the mean to hold the share. */
function reachOf(off: number, coverage: number): number {
  const most = off - normalQuantile((1 - coverage) / 2);
  return halved(0, most, (reach) => normalCdf(off + reach) - normalCdf(off - reach) < coverage);
}

/** The place where `below` turns from true to false. */
function halved(from: number, to: number, below: (x: number) => boolean): number {
  let low = from;
  let high = to;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (below(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
