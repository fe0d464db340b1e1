import { betaQuantile } from "./beta-distribution";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireCounts } from "./require-counts";
import { requireProbability } from "./require-probability";
import type { ShareInterval } from "./wilson-interval";

/**
 * Interval for the true share behind `successes` out of `trials` that never holds it less often than
 * `confidence` says (Clopper-Pearson, exact).
 *
 * `successes`, `trials`: whole numbers, successes not above trials; `confidence`: 0.95 for 95 of 100. Each end leaves half
 * of the rest outside. No trial: too-few, counting trials. Bad input: not whole, negative, more successes than
 * trials, or a confidence outside 0 to 1 throws a RangeError. Assumes independent trials of one share.
 *
 * Source: Clopper, C.J. & Pearson, E.S. (1934), Biometrika 26, 404-413.
 */
export function clopperPearsonInterval(successes: number, trials: number, confidence: number): Outcome<ShareInterval> {
  requireCounts(successes, trials);
  requireProbability(confidence, "confidence");
  if (trials === 0) return tooFew(0, 1);
  const outside = (1 - confidence) / 2;
  const failures = trials - successes;
  return ok({
    low: successes === 0 ? 0 : betaQuantile(outside, successes, failures + 1),
    high: failures === 0 ? 1 : 1 - betaQuantile(outside, failures, successes + 1),
  });
}
