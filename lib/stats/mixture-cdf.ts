import type { NormalMixture } from "./normal-mixture";
import { tabulatedNormalCdf } from "./tabulated-normal";

/** Probability that a draw of the mixture is at most `x`, 0 to 1, to 1e-9. */
export function mixtureCdf(mixture: NormalMixture, x: number): number {
  const { weights, means, sds } = mixture;
  let sum = 0;
  for (let i = 0; i < weights.length; i++)
    sum += (weights[i] as number) * tabulatedNormalCdf((x - (means[i] as number)) / (sds[i] as number));
  return sum;
}
