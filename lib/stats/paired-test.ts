import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";
import { requireProbability } from "./require-probability";
import { tQuantile, tUpperTail } from "./t-distribution";
import { univariateSummary } from "./univariate-summary";
import type { MeanDifference } from "./welch-test";

/**
 * Mean of the differences of pairs, held against 0: the one-sample t test.
 *
 * `differences`: one a pair (or one list less a fixed value), any order, one unit; `confidence`: 0.95 for 95 of 100. Fewer than
 * two: too-few, counting differences. All equal: too-few, counting different differences (1 of 2). Bad input: NaN, infinity
 * or a confidence outside 0 to 1 throws a RangeError. Assumes independent differences, normal or many.
 *
 * Source: Gosset, W.S. (1908), Biometrika 6, 1-25.
 */
export function pairedTest(differences: readonly number[], confidence: number): Outcome<MeanDifference> {
  requireFinite(differences, "differences");
  requireProbability(confidence, "confidence");
  const summary = univariateSummary(differences);
  if (summary.kind !== "ok") return summary;
  if (differences.every((value) => value === differences[0])) return tooFew(1, 2);
  const { mean, sd, count } = summary.value;
  const degrees = count - 1;
  const standardError = sd / Math.sqrt(count);
  const reach = -tQuantile((1 - confidence) / 2, degrees) * standardError;
  const t = mean / standardError;
  return ok({
    difference: mean,
    standardError,
    low: mean - reach,
    high: mean + reach,
    t,
    degrees,
    p: 2 * tUpperTail(Math.abs(t), degrees),
  });
}
