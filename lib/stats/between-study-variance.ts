import { compensatedSum } from "./compensated-sum";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";
import { requirePositive } from "./require-positive";

/** DerSimonian and Laird's moments, Paule and Mandel's weighted squares, or restricted maximum likelihood. */
export type VarianceEstimator = "moments" | "paule-mandel" | "restricted-likelihood";

/** Halvings of a bracket: past what a double can tell apart. */
const BISECTIONS = 60;

/** Steps of the search for the highest restricted likelihood, even in sd, from 0 to the range of the effects. */
const SEARCH_STEPS = 200;

/**
 * Variance of the true effects between studies, beyond what the studies' own errors explain; 0 or more.
 *
 * `effects`: one a study, in one unit; `variances`: of their errors, known, in the unit squared, same order; `estimator`: see
 * its type. Result in the unit squared. Fewer than two studies: too-few, counting studies. Bad input: unequal lengths,
 * NaN, infinity or a variance that isn't above 0 throws a RangeError. Assumes independent studies; the restricted
 * likelihood also assumes normal effects, and takes the highest of its humps.
 *
 * Source: DerSimonian, R. & Laird, N. (1986), Controlled Clinical Trials 7, 177-188; Paule, R.C. & Mandel, J. (1982),
 * Journal of Research of the National Bureau of Standards 87, 377-385; Viechtbauer, W. (2005), Journal of Educational
 * and Behavioral Statistics 30, 261-293.
 */
export function betweenStudyVariance(
  effects: readonly number[],
  variances: readonly number[],
  estimator: VarianceEstimator,
): Outcome<number> {
  requireFinite(effects, "effects");
  variances.forEach((variance, index) => {
    requirePositive(variance, `variances[${index}]`);
  });
  const count = effects.length;
  if (variances.length !== count) throw new RangeError(`variances must have ${count} values, got ${variances.length}`);
  if (count < 2) return tooFew(count, 2);

  const at = (between: number) => {
    const weights = variances.map((variance) => 1 / (variance + between));
    const total = compensatedSum(weights);
    const mean = compensatedSum(weights.map((weight, i) => weight * (effects[i] as number))) / total;
    const squares = effects.map((effect) => (effect - mean) ** 2);
    return { weights, total, squares, q: compensatedSum(weights.map((weight, i) => weight * (squares[i] as number))) };
  };
  const range = Math.max(...effects) - Math.min(...effects);
  if (range === 0) return ok(0);

  if (estimator === "moments") {
    const { weights, total, q } = at(0);
    const size = total - compensatedSum(weights.map((weight) => weight * weight)) / total;
    return ok(Math.max(0, (q - (count - 1)) / size));
  }
  if (estimator === "paule-mandel") {
    return ok(zeroOf((between) => at(between).q - (count - 1), 0, (count * range * range) / (count - 1)));
  }
  const slope = (between: number): number => {
    const { weights, total, squares } = at(between);
    const terms = weights.map((weight, i) => weight * weight * ((squares[i] as number) + 1 / total) - weight);
    return compensatedSum(terms);
  };
  const height = (between: number): number => {
    const { weights, total, q } = at(between);
    return compensatedSum(weights.map((weight) => Math.log(weight))) - Math.log(total) - q;
  };
  const steps = Array.from({ length: SEARCH_STEPS + 1 }, (_, i) => ((i / SEARCH_STEPS) * range) ** 2);
  const heights = steps.map(height);
  const best = heights.indexOf(Math.max(...heights));
  return ok(zeroOf(slope, steps[Math.max(0, best - 1)] as number, steps[Math.min(SEARCH_STEPS, best + 1)] as number));
}

/** Where a function falls through 0 between two ends; the low end where it starts below 0. */
function zeroOf(excess: (between: number) => number, from: number, to: number): number {
  let low = from;
  let high = to;
  if (excess(low) <= 0) return low;
  for (let round = 0; round < BISECTIONS; round++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (excess(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
