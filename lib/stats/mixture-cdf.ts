import type { NormalMixture } from "./normal-mixture";
import { tabulatedNormalCdf, tabulatedNormalDensity } from "./tabulated-normal";

// Local names: an imported binding is looked up again at every call.
const cdf = tabulatedNormalCdf;
const density = tabulatedNormalDensity;

/** Probability that a draw of the mixture is at most `x`, 0 to 1, to 1e-9. */
export function mixtureCdf(mixture: NormalMixture, x: number): number {
  const { weights, means, sds } = mixture;
  let sum = 0;
  for (let i = 0; i < weights.length; i++)
    sum += (weights[i] as number) * cdf((x - (means[i] as number)) / (sds[i] as number));
  return sum;
}

/** Density of the mixture at `x`, to 2e-5 of its highest possible value: good enough to aim a root finder. */
export function mixtureDensity(mixture: NormalMixture, x: number): number {
  const { weights, means, sds } = mixture;
  let sum = 0;
  for (let i = 0; i < weights.length; i++) {
    const sd = sds[i] as number;
    sum += ((weights[i] as number) / sd) * density((x - (means[i] as number)) / sd);
  }
  return sum;
}
