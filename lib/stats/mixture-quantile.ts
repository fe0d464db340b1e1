import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { mixtureCdf, mixtureDensity } from "./mixture-cdf";
import type { NormalMixture } from "./normal-mixture";
import type { Estimate } from "./series";

/**
 * Quantile of a mixture of normals: where its distribution function reaches `probability` (between 0 and 1).
 *
 * Newton steps kept inside a shrinking bracket, a bisection wherever a step would leave it; exact to 1e-6 of
 * the mixture's sd. No random draws. Throws on a probability outside (0, 1).
 */
export function mixtureQuantile(mixture: NormalMixture, probability: number): number {
  if (!(probability > 0 && probability < 1)) throw new RangeError(`a probability must be in (0, 1): ${probability}`);
  const { weights, means, sds } = mixture;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let mean = 0;
  let square = 0;
  const reach = normalQuantile(probability, 0, 1);
  // Every component's own quantile lies between these, so the mixture's does too.
  for (let i = 0; i < weights.length; i++) {
    const own = (means[i] as number) + reach * (sds[i] as number);
    if (own < low) low = own;
    if (own > high) high = own;
    mean += (weights[i] as number) * (means[i] as number);
  }
  for (let i = 0; i < weights.length; i++)
    square += (weights[i] as number) * ((sds[i] as number) ** 2 + ((means[i] as number) - mean) ** 2);
  const sd = Math.sqrt(square);
  const tolerance = 1e-6 * sd;
  let x = Math.min(high, Math.max(low, mean + reach * sd));
  for (let round = 0; round < 100 && high - low > tolerance; round++) {
    const excess = mixtureCdf(mixture, x) - probability;
    if (excess > 0) high = x;
    else low = x;
    const density = mixtureDensity(mixture, x);
    const next = x - excess / density;
    const inside = next > low && next < high;
    if (inside && Math.abs(next - x) <= tolerance) return next;
    x = inside ? next : (low + high) / 2;
  }
  return x;
}

/** Median of a mixture with its central 80 and 95 of 100. */
export function mixtureEstimate(mixture: NormalMixture): Estimate {
  return {
    estimate: mixtureQuantile(mixture, 0.5),
    low80: mixtureQuantile(mixture, 0.1),
    high80: mixtureQuantile(mixture, 0.9),
    low95: mixtureQuantile(mixture, 0.025),
    high95: mixtureQuantile(mixture, 0.975),
  };
}
