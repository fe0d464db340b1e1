import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import type { NormalMixture } from "./normal-mixture";

/** Probability that a draw of the mixture is at most `x`, 0 to 1. */
export function mixtureCdf(mixture: NormalMixture, x: number): number {
  const { weights, means, sds } = mixture;
  let sum = 0;
  for (let i = 0; i < weights.length; i++) {
    const z = (x - (means[i] as number)) / (sds[i] as number);
    sum += z > 8.5 ? (weights[i] as number) : z < -8.5 ? 0 : (weights[i] as number) * normalCdf(z, 0, 1);
  }
  return sum;
}
