import { requireFinite } from "./require-finite";
import { requirePositive } from "./require-positive";

/** One quantity that may have moved with others, and how. */
export interface ShiftItem {
  /** Departure from what was expected, in the item's own unit. */
  readonly residual: number;
  /** Variance of the departure when nothing moved it, in the unit squared; above 0. */
  readonly variance: number;
  /** By how much it moves per unit of the first and of the second shared shift. */
  readonly loadings: readonly [number, number];
  /** Variance that a change of its own adds, in the unit squared; above 0. */
  readonly changeVariance: number;
}

/** One belief about the two shared shifts: both normal about 0, independent. */
export interface ShiftBelief {
  readonly variances: readonly [number, number];
  /** Share of belief, 0 or more. */
  readonly weight: number;
}

/** What is believed of the shared shifts once the items are known: a mixture of normal distributions. */
export interface SharedShift {
  /** Log of the density of the residuals: each belief and set of changes by its weight. */
  readonly logEvidence: number;
  /** Share of belief of each component, sum 1; component c rests on belief c modulo the number of beliefs. */
  readonly weights: Float64Array;
  /** Mean of the first shift in each component. */
  readonly means: Float64Array;
  /** Variance of the first shift in each component, 0 where its belief has none. */
  readonly variances: Float64Array;
  /** Probability that the item changed on its own, one entry an item, same order. */
  readonly changed: readonly number[];
}

/**
 * Two shifts that several quantities share, told from changes that each makes on its own.
 *
 * residual = loading1 x first + loading2 x second + error, where the error has the item's variance, and `changeVariance`
 * more if it changed on its own. Every set of own changes of at most `changeWeights.length` - 1 items is taken in with
 * the weight that stands at its size; each is a normal model whose density is exact.
 *
 * `items`: one or more, any order. `beliefs`: one or more. `changeWeights`: weight of any one set of 0, 1, 2, ... items;
 * the first above 0. Work grows with the number of sets. Bad input: no item or belief, a number that isn't finite, a
 * variance that isn't above 0 or a negative weight throws a RangeError.
 *
 * Assumes independent errors. Source: the matrix determinant lemma and its inverse (Golub & Van Loan, Matrix Computations,
 * 4th ed., 2.1.4); sets of own changes as in Mitchell, T.J. & Beauchamp, J.J. (1988), JASA 83, 1023-1032.
 */
export function sharedShift(
  items: readonly ShiftItem[],
  beliefs: readonly ShiftBelief[],
  changeWeights: readonly number[],
): SharedShift {
  requireShift(items, beliefs, changeWeights);
  const logs: number[] = [];
  const means: number[] = [];
  const variances: number[] = [];
  const sets: number[][] = [];
  const constant = -0.5 * items.length * Math.log(2 * Math.PI);
  const leaf = (sums: ShiftSums, changed: readonly number[]): void => {
    sets.push([...changed]);
    const prior = Math.log(changeWeights[changed.length] as number) + constant;
    for (const { variances: spread, weight } of beliefs) {
      const [first, second] = spread;
      const determinant = (1 + first * sums.s11) * (1 + second * sums.s22) - first * second * sums.s12 ** 2;
      const v11 = (first * (1 + second * sums.s22)) / determinant;
      const v22 = (second * (1 + first * sums.s11)) / determinant;
      const v12 = (-first * second * sums.s12) / determinant;
      const fitted = v11 * sums.h1 ** 2 + 2 * v12 * sums.h1 * sums.h2 + v22 * sums.h2 ** 2;
      logs.push(prior + Math.log(weight) - 0.5 * (sums.logVariance + Math.log(determinant) + sums.square - fitted));
      means.push(v11 * sums.h1 + v12 * sums.h2);
      variances.push(v11);
    }
  };
  const grow = (at: number, sums: ShiftSums, changed: readonly number[]): void => {
    const item = items[at];
    if (item === undefined) {
      leaf(sums, changed);
      return;
    }
    grow(at + 1, withItem(sums, item, item.variance), changed);
    if ((changeWeights[changed.length + 1] ?? 0) > 0)
      grow(at + 1, withItem(sums, item, item.variance + item.changeVariance), [...changed, at]);
  };
  grow(0, { square: 0, h1: 0, h2: 0, s11: 0, s12: 0, s22: 0, logVariance: 0 }, []);
  return finished(logs, means, variances, sets, items.length, beliefs.length);
}

/** Sums over the items taken in so far, each divided by its variance. */
interface ShiftSums {
  readonly square: number;
  readonly h1: number;
  readonly h2: number;
  readonly s11: number;
  readonly s12: number;
  readonly s22: number;
  readonly logVariance: number;
}

function withItem(sums: ShiftSums, { residual, loadings: [first, second] }: ShiftItem, variance: number): ShiftSums {
  return {
    square: sums.square + residual ** 2 / variance,
    h1: sums.h1 + (first * residual) / variance,
    h2: sums.h2 + (second * residual) / variance,
    s11: sums.s11 + first ** 2 / variance,
    s12: sums.s12 + (first * second) / variance,
    s22: sums.s22 + second ** 2 / variance,
    logVariance: sums.logVariance + Math.log(variance),
  };
}

function finished(
  logs: readonly number[],
  means: readonly number[],
  variances: readonly number[],
  sets: readonly (readonly number[])[],
  count: number,
  beliefs: number,
): SharedShift {
  const largest = logs.reduce((most, log) => Math.max(most, log), Number.NEGATIVE_INFINITY);
  const raw = Float64Array.from(logs, (log) => Math.exp(log - largest));
  const total = raw.reduce((sum, weight) => sum + weight, 0);
  const weights = raw.map((weight) => weight / total);
  const changed = new Array<number>(count).fill(0);
  sets.forEach((set, place) => {
    let share = 0;
    for (let k = 0; k < beliefs; k++) share += weights[place * beliefs + k] as number;
    for (const item of set) changed[item] = (changed[item] as number) + share;
  });
  return {
    logEvidence: largest + Math.log(total),
    weights,
    means: Float64Array.from(means),
    variances: Float64Array.from(variances),
    changed,
  };
}

function requireShift(
  items: readonly ShiftItem[],
  beliefs: readonly ShiftBelief[],
  changeWeights: readonly number[],
): void {
  if (items.length === 0) throw new RangeError("a shared shift needs an item: 0");
  for (const { residual, variance, loadings, changeVariance } of items) {
    requireFinite([residual, ...loadings], "residual and loadings");
    requirePositive(variance, "variance");
    requirePositive(changeVariance, "variance of a change");
  }
  for (const { variances, weight } of beliefs)
    for (const number of [...variances, weight])
      if (!(number >= 0 && Number.isFinite(number)))
        throw new RangeError(`variances and weights of a belief must be 0 or more: ${number}`);
  if (!beliefs.some((belief) => belief.weight > 0))
    throw new RangeError("a shared shift needs a belief with weight: 0");
  if (!((changeWeights[0] ?? 0) > 0))
    throw new RangeError(`the weight of no change must be above 0: ${changeWeights[0]}`);
  for (const weight of changeWeights)
    if (!(weight >= 0 && Number.isFinite(weight)))
      throw new RangeError(`the weight of a set must be 0 or more: ${weight}`);
}
