import { normalQuantile } from "./normal-distribution";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireCounts } from "./require-counts";
import { requireProbability } from "./require-probability";

/** Ends of an interval for a share, each 0 to 1. */
export interface ShareInterval {
  readonly low: number;
  readonly high: number;
}

/**
 * Interval for the true share behind `successes` out of `trials`, by the score test (Wilson), without
 * continuity correction.
 *
 * `successes`, `trials`: whole numbers, successes not above trials; `confidence`: 0.95 for 95 of 100. The result
 * holds the true share about as often as `confidence` says, on average over shares. No trial: too-few,
 * counting trials. Bad input: not whole, negative, more successes than trials, or a confidence outside 0 to 1
 * throws a RangeError. Assumes independent trials of one share.
 *
 * Source: Wilson, E.B. (1927), Journal of the American Statistical Association 22, 209-212; Newcombe, R.G. (1998).
 */
export function wilsonInterval(successes: number, trials: number, confidence: number): Outcome<ShareInterval> {
  requireCounts(successes, trials);
  requireProbability(confidence, "confidence");
  if (trials === 0) return tooFew(0, 1);
  const z = -normalQuantile((1 - confidence) / 2);
  const share = successes / trials;
  const stretch = 1 + (z * z) / trials;
  const centre = (share + (z * z) / (2 * trials)) / stretch;
  const half = (z / stretch) * Math.sqrt((share * (1 - share)) / trials + (z * z) / (4 * trials * trials));
  return ok({
    low: successes === 0 ? 0 : centre - half,
    high: successes === trials ? 1 : centre + half,
  });
}
