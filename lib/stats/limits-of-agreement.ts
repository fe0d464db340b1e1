import { linearFit } from "./linear-fit";
import { normalQuantile } from "./normal-distribution";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";
import { requireProbability } from "./require-probability";
import { tQuantile } from "./t-distribution";
import { univariateSummary } from "./univariate-summary";

/** A value with its standard error and interval. */
export interface Estimate {
  readonly value: number;
  readonly standardError: number;
  readonly low: number;
  readonly high: number;
}

/** How far two ways of measuring one thing differ, first less second, in their unit. */
export interface LimitsOfAgreement {
  readonly bias: Estimate;
  /** Sd of the differences. */
  readonly sd: number;
  /** The difference that half of the rest of `share` falls below. */
  readonly lower: Estimate;
  readonly upper: Estimate;
  /** Change of the difference for one unit of the pair's mean (no unit); too-few counts different means, 2 needed, and pairs, 3. */
  readonly proportionalBias: Outcome<Estimate>;
}

/**
 * Bias and limits of agreement of paired readings, each with an interval, and the slope of the difference on the mean.
 *
 * `first`, `second`: equal lengths, pair by pair, any order, one unit; `share`: of differences that the limits should hold, 0.95
 * for 1.96 sd either way; `confidence`: of the intervals. Fewer than two pairs: too-few, counting pairs. Differences all equal:
 * too-few, counting different differences (1 of 2). Bad input: unequal lengths, NaN, infinity, or a share or confidence outside 0
 * to 1 throws a RangeError. Assumes normal, independent differences whose mean and spread don't change along the scale: the slope
 * tells when the mean does. The limits' errors are the large-sample ones, s x sqrt((1 + z²/2) / n), which is s x sqrt(3 / n) at z = 2.
 *
 * Source: Bland, J.M. & Altman, D.G. (1986), Lancet i, 307-310; slope: the same (1999), Statistical Methods in Medical Research 8.
 */
export function limitsOfAgreement(
  first: readonly number[],
  second: readonly number[],
  share: number,
  confidence: number,
): Outcome<LimitsOfAgreement> {
  requireFinite(first, "first");
  requireFinite(second, "second");
  requireProbability(share, "share");
  requireProbability(confidence, "confidence");
  if (first.length !== second.length)
    throw new RangeError(`second must have ${first.length} values, got ${second.length}`);
  const differences = first.map((value, i) => value - (second[i] as number));
  const summary = univariateSummary(differences);
  if (summary.kind !== "ok") return summary;
  if (differences.every((value) => value === differences[0])) return tooFew(1, 2);
  const { mean, sd, count } = summary.value;
  const tail = (1 - confidence) / 2;
  const estimate = (value: number, standardError: number, degrees: number): Estimate => {
    const reach = -tQuantile(tail, degrees) * standardError;
    return { value, standardError, low: value - reach, high: value + reach };
  };
  const z = -normalQuantile((1 - share) / 2);
  const limitError = sd * Math.sqrt((1 + (z * z) / 2) / count);
  const means = first.map((value, i) => (value + (second[i] as number)) / 2);
  const line = linearFit(means, differences);
  return ok({
    bias: estimate(mean, sd / Math.sqrt(count), count - 1),
    sd,
    lower: estimate(mean - z * sd, limitError, count - 1),
    upper: estimate(mean + z * sd, limitError, count - 1),
    proportionalBias:
      line.kind === "ok" ? ok(estimate(line.value.slope, line.value.slopeStandardError, line.value.degrees)) : line,
  });
}
