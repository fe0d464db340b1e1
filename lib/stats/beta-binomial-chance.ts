import { requireCounts } from "./require-counts";
import { requireProbability } from "./require-probability";

/** A product this far from 1 is put away as its logarithm before it can run out of range. */
const SMALL = 1e-200;

/**
 * Natural log of the chance of `successes` in `trials` that share a group, when any two of them are correlated.
 *
 * `successes`, `trials`: whole numbers; `share`: mean chance of a success, strictly between 0 and 1; `correlation`: 0 (independent:
 * binomial) to below 1, equal to 1 / (a + b + 1) of the beta distribution that the group's own chance is drawn from.
 * Result 0 or less; no trial gives 0. Bad input throws a RangeError. About 13 digits of the chance: products, no differences.
 *
 * Source: Skellam, J.G. (1948), Journal of the Royal Statistical Society B 10, 257-261; parameters after Griffiths, D.A.
 * (1973), Biometrics 29, 637-648.
 */
export function betaBinomialLogChance(successes: number, trials: number, share: number, correlation: number): number {
  requireCounts(successes, trials);
  requireProbability(share, "share");
  if (!(correlation >= 0 && correlation < 1)) throw new RangeError(`correlation must be in [0, 1), got ${correlation}`);
  const pull = correlation / (1 - correlation);
  let log = 0;
  let product = 1;
  for (let i = 0; i < trials; i++) {
    const failures = i - successes;
    const next = failures < 0 ? ((share + i * pull) * (trials - i)) / (i + 1) : 1 - share + failures * pull;
    product *= next / (1 + i * pull);
    if (product < SMALL || product > 1 / SMALL) {
      log += Math.log(product);
      product = 1;
    }
  }
  return log + Math.log(product);
}
