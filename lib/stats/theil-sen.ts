import { normalQuantile } from "./normal-distribution";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";
import { requireProbability } from "./require-probability";
import { tieSizes } from "./tie-sizes";

/** A straight line by medians of pairwise slopes. */
export interface TheilSen {
  /** In the unit of the values over the unit of time. */
  readonly slope: number;
  /** Median value less slope times median time, in the unit of the values. */
  readonly intercept: number;
  /** Number of pairs with different times. */
  readonly pairs: number;
  /** Interval of the slope; too-few counts points: with fewer, no pair of ranks holds the confidence. */
  readonly interval: Outcome<{ readonly low: number; readonly high: number }>;
}

/** How a rank between two slopes is read: between them in proportion (Gilbert), or at the nearest one. */
export type RankReading = "interpolated" | "nearest";

/**
 * Theil-Sen slope: the median of the slopes of all pairs of points, with Sen's interval.
 *
 * `times` and `values`: equal lengths, point by point, any order, uneven spacing and ties allowed, any units; `confidence`:
 * 0.95 for 95 of 100. Fewer than two different times: too-few, counting different times. Bad input: unequal
 * lengths, NaN, infinity or a confidence outside 0 to 1 throws a RangeError. The interval comes from the normal
 * approximation to Kendall's S with ties, and assumes independent values.
 *
 * Source: Sen, P.K. (1968), Journal of the American Statistical Association 63, 1379-1389; interpolated ranks after
 * Gilbert, R.O. (1987), Statistical Methods for Environmental Pollution Monitoring, 16.5.
 */
export function theilSen(
  times: readonly number[],
  values: readonly number[],
  confidence: number,
  ranks: RankReading = "interpolated",
): Outcome<TheilSen> {
  requireFinite(times, "times");
  requireFinite(values, "values");
  requireProbability(confidence, "confidence");
  if (times.length !== values.length)
    throw new RangeError(`times must have ${values.length} values, got ${times.length}`);
  const different = new Set(times).size;
  if (different < 2) return tooFew(different, 2);

  const slopes: number[] = [];
  for (let i = 0; i < times.length; i++) {
    for (let j = i + 1; j < times.length; j++) {
      const gap = (times[j] as number) - (times[i] as number);
      if (gap !== 0) slopes.push(((values[j] as number) - (values[i] as number)) / gap);
    }
  }
  slopes.sort((a, b) => a - b);
  const slope = median(slopes);
  const z = -normalQuantile((1 - confidence) / 2);
  const reach = z * Math.sqrt(varianceOfS(values.length, [tieSizes(times), tieSizes(values)]));
  const lowRank = (slopes.length - reach) / 2;
  const highRank = slopes.length + 1 - lowRank;
  return ok({
    slope,
    intercept: median([...values].sort((a, b) => a - b)) - slope * median([...times].sort((a, b) => a - b)),
    pairs: slopes.length,
    interval:
      lowRank >= 1
        ? ok({ low: atRank(slopes, lowRank, ranks), high: atRank(slopes, highRank, ranks) })
        : tooFew(values.length, Math.max(values.length + 1, pointsFor(z))),
  });
}

/** Value at a rank counted from 1 that may lie between two. */
function atRank(sorted: readonly number[], rank: number, ranks: RankReading): number {
  const place = ranks === "nearest" ? Math.round(rank) : rank;
  const below = Math.floor(place);
  const low = sorted[below - 1] as number;
  return low + (place - below) * ((sorted[below] ?? low) - low);
}

function median(sorted: readonly number[]): number {
  const half = sorted.length / 2;
  return ((sorted[Math.ceil(half) - 1] as number) + (sorted[Math.floor(half)] as number)) / 2;
}

/** Variance of Kendall's S, drawn down for the ties of each variable. */
function varianceOfS(count: number, ties: readonly (readonly number[])[]): number {
  const full = (k: number) => k * (k - 1) * (2 * k + 5);
  return (full(count) - ties.flat().reduce((sum, k) => sum + full(k), 0)) / 18;
}

/** Smallest number of untied points whose outermost slopes are wide enough. */
function pointsFor(z: number): number {
  let count = 2;
  while ((count * (count - 1)) / 2 - z * Math.sqrt(varianceOfS(count, [])) < 2) count++;
  return count;
}
