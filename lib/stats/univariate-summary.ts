import { compensatedDot } from "./compensated-dot";
import { compensatedSum } from "./compensated-sum";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";

/** Centre, spread and serial dependence of one list. */
export interface UnivariateSummary {
  readonly count: number;
  /** In the unit of the values. */
  readonly mean: number;
  /** With divisor count - 1, in the unit of the values. */
  readonly sd: number;
  /** Correlation of neighbours, about -1 to 1; too-few counts distinct values, 2 needed. */
  readonly lag1Autocorrelation: Outcome<number>;
}

/**
 * Mean, standard deviation and lag-1 autocorrelation of a list.
 *
 * `values`: at least two, in the order taken, in one unit. The autocorrelation is the sum of products of
 * neighbouring deviations over the sum of squared deviations. Fewer than two values: too-few, counting values.
 * Bad input: NaN or infinity throws a RangeError. Assumes nothing of the distribution. Deviations are
 * taken from the mean to twice the working digits, so a small spread on a large level keeps its digits.
 *
 * Source: definitions of the NIST Statistical Reference Datasets, univariate summary statistics;
 * two-pass form after Chan, T.F., Golub, G.H. & LeVeque, R.J. (1983), The American Statistician 37, 242-247.
 */
export function univariateSummary(values: readonly number[]): Outcome<UnivariateSummary> {
  requireFinite(values, "values");
  const count = values.length;
  if (count < 2) return tooFew(count, 2);
  const anchor = values[0] as number;
  const shifted = values.map((value) => value - anchor);
  const shiftedMean = compensatedSum(shifted) / count;
  const deviations = shifted.map((value) => value - shiftedMean);
  const squares = compensatedDot(deviations, deviations);
  const neighbours = compensatedDot(deviations.slice(0, -1), deviations.slice(1));
  const constant = values.every((value) => value === anchor);
  return ok({
    count,
    mean: compensatedSum(values) / count,
    sd: Math.sqrt(squares / (count - 1)),
    lag1Autocorrelation: constant ? tooFew(1, 2) : ok(neighbours / squares),
  });
}
