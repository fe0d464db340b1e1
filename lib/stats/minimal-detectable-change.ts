import { normalQuantile } from "./normal-distribution";
import { requirePositive } from "./require-positive";
import { requireProbability } from "./require-probability";

/**
 * The difference of two values that error alone passes, either way, with chance 1 - `confidence`: z x sqrt(2) x their error.
 *
 * `standardError`: of each of the two values, any unit, above 0; `confidence`: 0.95 for 95 of 100, then 2.77 times the
 * error. Result in the same unit. Bad input: an error not above 0 or not finite, or a confidence outside 0 to 1, throws a
 * RangeError. Assumes normal, independent errors of one known size.
 *
 * Source: Weir, J.P. (2005), Journal of Strength and Conditioning Research 19, 231-240 (from memory).
 */
export function minimalDetectableChange(standardError: number, confidence: number): number {
  requirePositive(standardError, "standardError");
  requireProbability(confidence, "confidence");
  return -normalQuantile((1 - confidence) / 2) * Math.SQRT2 * standardError;
}
