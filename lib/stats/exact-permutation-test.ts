import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";

/** An exact answer, or too little, or more arrangements than are counted through. */
export type ExactP =
  | Outcome<{ readonly p: number; readonly arrangements: number }>
  | { readonly kind: "too-many"; readonly have: number; readonly need: number };

/** Most splits counted through: 12 against 12; about a fifth of a second. */
export const MOST_SPLITS = 2_704_156;

/** Sums that differ by less than this share of the sum of sizes are tied: rounding of decimals must not break a tie. */
export const TIED = 1e-12;

/**
 * Two-sided exact test of two groups: the share of all splits whose means differ at least as much as those seen.
 *
 * `first`, `second`: lists in one unit, any order, lengths from 1. The result counts every split of the values taken together into
 * groups of these sizes; ties with the seen difference count as at least as much. An empty list: too-few, counting values
 * of the shorter. More than `MOST_SPLITS` splits: too-many, with how many there are (`have`) and the most that are counted
 * (`need`). Bad input: NaN or infinity throws a RangeError. Assumes that under no difference any split is as likely as any other.
 *
 * Source: Pitman, E.J.G. (1937), Supplement to the Journal of the Royal Statistical Society 4, 119-130.
 */
export function exactPermutationTest(first: readonly number[], second: readonly number[]): ExactP {
  requireFinite(first, "first");
  requireFinite(second, "second");
  const size = Math.min(first.length, second.length);
  if (size === 0) return tooFew(0, 1);
  const count = first.length + second.length;
  let splits = 1;
  for (let i = 1; i <= size; i++) splits = Math.round((splits * (count - size + i)) / i);
  if (splits > MOST_SPLITS) return { kind: "too-many", have: splits, need: MOST_SPLITS };

  const all = [...first, ...second];
  const mean = all.reduce((sum, value) => sum + value, 0) / count;
  const values = all.map((value) => value - mean);
  const [from, to] = first.length <= second.length ? [0, size] : [first.length, count];
  const seen = Math.abs(values.slice(from, to).reduce((sum, value) => sum + value, 0));
  const enough = seen - TIED * all.reduce((sum, value) => sum + Math.abs(value), 0);
  let asFar = 0;
  const choose = (start: number, left: number, sum: number): void => {
    if (left === 0) {
      if (Math.abs(sum) >= enough) asFar++;
      return;
    }
    for (let i = start; i <= count - left; i++) choose(i + 1, left - 1, sum + (values[i] as number));
  };
  choose(0, size, 0);
  return ok({ p: asFar / splits, arrangements: splits });
}
