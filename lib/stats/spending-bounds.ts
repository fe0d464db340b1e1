import { crossingChances } from "./crossing-chances";
import { spentError } from "./spent-error";

/** Bounds are looked for up to here; a look whose share of the error lies beyond asks nothing. */
const MOST = 12;
/** Halvings: the bound is found to 12 / 2^32. */
const BISECTIONS = 32;

/**
 * Bounds of a test that is looked at several times, such that all looks together err as often as one look would.
 *
 * `fractions`: share of the information at each look, rising, from above 0 to 1. `level`: two-sided error of the whole, 0.05 for
 * 5 of 100. Result, one for each look: the least standardised difference, either way, that proves something there; infinity
 * where less than 1e-32 may be spent. What is spent up to a look is `spentError`. Bad input as in `crossingChances` and
 * `spentError`. Assumes as `crossingChances`.
 *
 * Source: Lan, K.K.G. & DeMets, D.L. (1983), Biometrika 70, 659-663.
 */
export function spendingBounds(fractions: readonly number[], level: number): number[] {
  const bounds: number[] = [];
  let spent = 0;
  for (const [look, fraction] of fractions.entries()) {
    const share = spentError(fraction, level) - spent;
    const so = fractions.slice(0, look + 1);
    const used = (bound: number): number => {
      const chance = crossingChances(so, [...bounds, bound], 0).at(-1);
      return chance === undefined ? 0 : chance.up + chance.down;
    };
    let [low, high] = [1e-9, MOST];
    if (used(high) > share) low = high = Number.POSITIVE_INFINITY;
    for (let round = 0; round < BISECTIONS && high < Number.POSITIVE_INFINITY; round++) {
      const middle = (low + high) / 2;
      if (used(middle) > share) low = middle;
      else high = middle;
    }
    bounds.push(high);
    spent += share;
  }
  return bounds;
}
