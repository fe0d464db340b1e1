import { normalQuantile } from "./normal-distribution";
import { type Outcome, ok, tooFew } from "./outcome";
import type { RandomEffectsMeta } from "./random-effects-meta";
import { requireProbability } from "./require-probability";
import { tQuantile } from "./t-distribution";

/**
 * Which of three different intervals is meant: normal with the weighted error; t with k - 1 degrees and the error of the
 * analysis's own interval; t with k - 2 degrees and the weighted error.
 */
export type PredictionRule = "normal" | "hartung-knapp" | "higgins";

/**
 * Interval for the true effect of one further study.
 *
 * `meta`: of `randomEffectsMeta`; `rule`: see its type (for "hartung-knapp" the analysis should have used that
 * interval); `confidence`: 0.95 for 95 of 100. Result in the unit of the effects. Higgins's rule needs three studies:
 * too-few, counting studies. Bad input: a confidence outside 0 to 1 throws a RangeError. Assumes that the further study's
 * true effect is drawn from the same normal distribution.
 *
 * Source: Higgins, J.P.T., Thompson, S.G. & Spiegelhalter, D.J. (2009), Journal of the Royal Statistical Society A 172,
 * 137-159 (k - 2); Partlett, C. & Riley, R.D. (2017), Statistics in Medicine 36, 301-317 (Hartung and Knapp's).
 */
export function metaPredictionInterval(
  meta: RandomEffectsMeta,
  rule: PredictionRule,
  confidence: number,
): Outcome<{ readonly low: number; readonly high: number }> {
  requireProbability(confidence, "confidence");
  const tail = (1 - confidence) / 2;
  if (rule === "higgins" && meta.studies < 3) return tooFew(meta.studies, 3);
  const error = rule === "hartung-knapp" ? meta.standardError : meta.weightedError;
  const degrees = meta.studies - (rule === "higgins" ? 2 : 1);
  const quantile = rule === "normal" ? normalQuantile(tail) : tQuantile(tail, degrees);
  const reach = -quantile * Math.sqrt(meta.betweenVariance + error * error);
  return ok({ low: meta.estimate - reach, high: meta.estimate + reach });
}
