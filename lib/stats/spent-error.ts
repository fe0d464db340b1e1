import { normalQuantile, normalUpperTail } from "./normal-distribution";
import { requireProbability } from "./require-probability";

/**
 * How much of a test's error may be used up when a share of its information is in: next to nothing early, all of it at the end.
 *
 * `fraction`: share of the planned information, from above 0; 1 and more: all of it. `level`: the two-sided error of the whole
 * test, 0.05 for 5 of 100. Result between 0 and `level`, both sides together. Bad input: a fraction of 0 or below, or NaN, and a
 * level outside 0 to 1 throw a RangeError. Assumes that information grows as the number of values.
 *
 * Source: Lan, K.K.G. & DeMets, D.L. (1983), Biometrika 70, 659-663: 2 - 2 Phi(z / sqrt(t)) on each side, which comes near the
 * boundaries of O'Brien, P.C. & Fleming, T.R. (1979), Biometrics 35, 549-556.
 */
export function spentError(fraction: number, level: number): number {
  requireProbability(level, "level");
  if (!(fraction > 0)) throw new RangeError(`fraction must be above 0, got ${fraction}`);
  if (fraction >= 1) return level;
  // Just below all of it the quantile and its tail don't undo each other to the last digit.
  return Math.min(level, 4 * normalUpperTail(-normalQuantile(level / 4) / Math.sqrt(fraction)));
}
