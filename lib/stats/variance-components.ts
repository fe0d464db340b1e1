import { oneWayAnova } from "./one-way-anova";
import { type Outcome, ok } from "./outcome";

/** Variances of one-way random effects, in the unit of the values, squared. */
export interface VarianceComponents {
  /** Variance of single values about their group's true mean. */
  readonly within: number;
  /** Variance of the groups' true means, 0 where the estimate falls below 0. */
  readonly between: number;
  /** The same before the floor: unbiased, and below 0 when the groups differ less than chance makes them. */
  readonly betweenUnfloored: number;
  /** n0: values a group, weighted so that unequal groups count rightly; their number when all are equal. */
  readonly effectiveSize: number;
}

/**
 * Variance between and within groups drawn at random, by the analysis-of-variance estimator with a floor at 0.
 *
 * `groups`: two or more lists of values in one unit, any sizes from 1, in any order. Fewer than two groups:
 * too-few, counting groups. No more values than groups: too-few, counting values. Bad input: an empty group, NaN or
 * infinity throws a RangeError. Assumes one within-group variance and independent errors; no distribution. Equals
 * restricted maximum likelihood for equal groups above the floor, and differs from it for unequal ones.
 *
 * Source: Searle, S.R., Casella, G. & McCulloch, C.E. (1992), Variance Components, 3.6 (from memory).
 */
export function varianceComponents(groups: readonly (readonly number[])[]): Outcome<VarianceComponents> {
  const anova = oneWayAnova(groups);
  if (anova.kind !== "ok") return anova;
  const { meanSquareWithin, betweenVariance, effectiveSize } = anova.value;
  return ok({
    within: meanSquareWithin,
    between: Math.max(0, betweenVariance),
    betweenUnfloored: betweenVariance,
    effectiveSize,
  });
}
