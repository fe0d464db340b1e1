import { requireFinite } from "./require-finite";
import { requirePositive } from "./require-positive";
import { tQuantile, tUpperTail } from "./t-distribution";
import type { MeanDifference } from "./welch-test";

/** Whether a difference lies between two margins, by two one-sided tests. */
export interface Equivalence {
  /** Chance of so large a t when the true difference is the lower margin. */
  readonly lowerP: number;
  /** Chance of so small a t when the true difference is the upper margin. */
  readonly upperP: number;
  /** The larger of the two: at or below a level, the difference lies between the margins at that level. */
  readonly p: number;
  /** Ends of the 90 of 100 interval, in the unit: between the margins exactly when p is below 0.05. */
  readonly low90: number;
  readonly high90: number;
}

/**
 * Two one-sided tests that a difference of means lies between `low` and `high`.
 *
 * `estimate`: the difference of `welchTest` (two lists) or `pairedTest` (pairs, or one list less a fixed value), with its
 * standard error and degrees of freedom; `low`, `high`: margins in the same unit, low below high, fixed before the data were seen.
 * Too little data is said by the test that makes the estimate. Bad input: margins that aren't finite or not in order, or an
 * error or degrees not above 0, throws a RangeError. Assumes what the estimate's test assumes.
 *
 * Source: Schuirmann, D.J. (1987), Journal of Pharmacokinetics and Biopharmaceutics 15, 657-680.
 */
export function equivalenceTest(
  estimate: Pick<MeanDifference, "difference" | "standardError" | "degrees">,
  low: number,
  high: number,
): Equivalence {
  const { difference, standardError, degrees } = estimate;
  requireFinite([low, high], "margins");
  requireFinite([difference], "difference");
  requirePositive(standardError, "standardError");
  requirePositive(degrees, "degrees");
  if (!(low < high)) throw new RangeError(`the margin ${low} must lie below the margin ${high}`);
  const lowerP = tUpperTail((difference - low) / standardError, degrees);
  const upperP = tUpperTail((high - difference) / standardError, degrees);
  const reach = -tQuantile(0.05, degrees) * standardError;
  return { lowerP, upperP, p: Math.max(lowerP, upperP), low90: difference - reach, high90: difference + reach };
}
