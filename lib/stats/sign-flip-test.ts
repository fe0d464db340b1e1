import { type ExactP, TIED } from "./exact-permutation-test";
import { ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";

/** Most sign patterns counted through: those of 21 pairs. */
export const MOST_PATTERNS = 2 ** 21;

/**
 * Two-sided exact test of pairs: the share of all sign patterns whose mean difference lies at least as far from 0 as that seen.
 *
 * `differences`: one a pair, any order, one unit; zeros are kept, and flip to themselves. The result counts all 2^n patterns;
 * ties with the seen mean count as at least as far. No pair: too-few, counting pairs. More than `MOST_PATTERNS` patterns:
 * too-many, with how many there are (`have`) and the most that are counted (`need`). Bad input: NaN or infinity throws a
 * RangeError. Assumes that under no difference each pair's difference is symmetric about 0, and pairs are independent.
 *
 * Source: Fisher, R.A. (1935), The Design of Experiments, section 21.
 */
export function signFlipTest(differences: readonly number[]): ExactP {
  requireFinite(differences, "differences");
  const count = differences.length;
  if (count === 0) return tooFew(0, 1);
  const patterns = 2 ** count;
  if (patterns > MOST_PATTERNS) return { kind: "too-many", have: patterns, need: MOST_PATTERNS };
  const sizes = differences.map(Math.abs);
  const seen = Math.abs(differences.reduce((sum, value) => sum + value, 0));
  const enough = seen - TIED * sizes.reduce((sum, value) => sum + value, 0);
  let asFar = 0;
  const flip = (index: number, sum: number): void => {
    if (index === count) {
      if (Math.abs(sum) >= enough) asFar++;
      return;
    }
    flip(index + 1, sum + (sizes[index] as number));
    flip(index + 1, sum - (sizes[index] as number));
  };
  flip(0, 0);
  return ok({ p: asFar / patterns, arrangements: patterns });
}
