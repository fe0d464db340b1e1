import { logGamma } from "./log-gamma";

/** What is believed of a stretch's level, and of the spread about it, before its values are seen. */
export type SegmentBelief =
  | {
      readonly kind: "known-sd";
      /** Level ~ normal(mean, levelSd); values ~ normal(level, sd). All in the unit. */
      readonly mean: number;
      readonly levelSd: number;
      readonly sd: number;
    }
  | {
      readonly kind: "normal-gamma";
      /** Level ~ normal(mean, 1 / (strength x precision)); precision ~ gamma(shape, rate). */
      readonly mean: number;
      readonly strength: number;
      readonly shape: number;
      readonly rate: number;
    };

/**
 * Natural log of the density of a stretch of values, its level (and spread) averaged out under the belief.
 *
 * `values`: one or more, any order, one unit; `belief` in the same unit. Larger speaks more for the stretch being of one
 * level. Bad input: an empty stretch throws a RangeError; belief parameters other than the mean must be above 0, or a
 * RangeError is thrown. Assumes independent normal values within the stretch.
 *
 * Source: Bernardo, J.M. & Smith, A.F.M. (2000), Bayesian Theory, 5.2 (conjugate normal and normal-gamma).
 */
export function segmentEvidence(values: readonly number[], belief: SegmentBelief): number {
  const count = values.length;
  if (count === 0) throw new RangeError("a stretch needs at least one value, got none");
  for (const [name, value] of Object.entries(belief)) {
    if (typeof value !== "number" || name === "mean") continue;
    if (!(value > 0 && Number.isFinite(value)))
      throw new RangeError(`${name} must be above 0 and finite, got ${value}`);
  }
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const away = (mean - belief.mean) ** 2;
  const circle = -(count / 2) * Math.log(2 * Math.PI);
  if (belief.kind === "known-sd") {
    const variance = belief.sd ** 2;
    const widened = variance + count * belief.levelSd ** 2;
    return (
      circle -
      (count - 1) * Math.log(belief.sd) -
      0.5 * Math.log(widened) -
      squares / (2 * variance) -
      (count * away) / (2 * widened)
    );
  }
  const { strength, shape, rate } = belief;
  const newShape = shape + count / 2;
  const newRate = rate + squares / 2 + (strength * count * away) / (2 * (strength + count));
  return (
    circle +
    logGamma(newShape) -
    logGamma(shape) +
    shape * Math.log(rate) -
    newShape * Math.log(newRate) +
    0.5 * (Math.log(strength) - Math.log(strength + count))
  );
}
