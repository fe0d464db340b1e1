import chisquareQuantile from "@stdlib/stats-base-dists-chisquare-quantile";
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import { mixtureQuantile } from "./mixture-quantile";
import type { NormalMixture } from "./normal-mixture";
import type { Band, Estimate } from "./series";
import { shortestInterval } from "./shortest-interval";
import { type MeasuredSpread, trueReplicateVariance } from "./true-replicate-variance";

const POINTS = 64;

/** Day-to-day sds with their weights of belief: one entry a nuisance cell; weights 0 or more, not all 0. */
export interface DaySds {
  readonly values: readonly number[];
  readonly weights: readonly number[];
}

/**
 * Share of replicates inside a band at today's level, measuring error taken out: median, with the shortest
 * 80 and 95 of 100; 0 to 1.
 *
 * `level`: belief about the level, in the unit. `daySds`: belief about the day-to-day sd. `spread`: replicate
 * spread, known with `degreesOfFreedom` (held between 4 and 60). 64 quantiles of the level meet 64 pairs of a
 * chi-squared point and a day sd (paired in bit-reversed order, so that they don't go together): no random
 * draws. Shortest rather than equal tails, because the share can't rise further at a band's centre. A band
 * without edges holds all. Throws when the band's low edge is above its high edge.
 *
 * Assumes normal replicates and days, and belief about spread independent of that about the level.
 */
export function shareInBand(
  level: NormalMixture,
  daySds: DaySds,
  spread: MeasuredSpread,
  degreesOfFreedom: number,
  band: Band,
): Estimate {
  const { low, high } = band;
  if (low !== null && high !== null && low > high)
    throw new RangeError(`a band's low edge must not be above its high edge: ${low} > ${high}`);
  const nu = Math.min(Math.max(degreesOfFreedom, 4), 60);
  const sds: number[] = [];
  for (let i = 0; i < POINTS; i++) {
    const daySd = daySdQuantile(daySds, (reversedBits(i) + 0.5) / POINTS);
    const factor = nu / chisquareQuantile((i + 0.5) / POINTS, nu);
    sds.push(Math.sqrt(daySd * daySd + trueReplicateVariance(spread, factor)));
  }
  const shares = new Float64Array(POINTS * POINTS);
  for (let j = 0; j < POINTS; j++) {
    const mean = mixtureQuantile(level, (j + 0.5) / POINTS);
    sds.forEach((sd, i) => {
      const below = high === null ? 1 : phi(high - mean, sd);
      const under = low === null ? 0 : phi(low - mean, sd);
      shares[j * POINTS + i] = Math.max(0, below - under);
    });
  }
  shares.sort();
  const narrow = shortestInterval(shares, 0.8);
  const wide = shortestInterval(shares, 0.95);
  const middle = shares.length >> 1;
  return {
    estimate: ((shares[middle - 1] as number) + (shares[middle] as number)) / 2,
    low80: narrow.low,
    high80: narrow.high,
    low95: Math.min(wide.low, narrow.low),
    high95: Math.max(wide.high, narrow.high),
  };
}

function phi(distance: number, sd: number): number {
  if (sd > 0) return normalCdf(distance / sd, 0, 1);
  return distance >= 0 ? 1 : 0;
}

function daySdQuantile(daySds: DaySds, probability: number): number {
  const order = daySds.values.map((_, i) => i);
  order.sort((a, b) => (daySds.values[a] as number) - (daySds.values[b] as number));
  let total = 0;
  for (const weight of daySds.weights) total += weight;
  let held = 0;
  let last = 0;
  for (const i of order) {
    held += daySds.weights[i] as number;
    last = daySds.values[i] as number;
    if (held >= probability * total) break;
  }
  return last;
}

function reversedBits(index: number): number {
  let rest = index;
  let reversed = 0;
  for (let size = POINTS; size > 1; size >>= 1) {
    reversed = (reversed << 1) | (rest & 1);
    rest >>= 1;
  }
  return reversed;
}
