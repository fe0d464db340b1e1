import { cholesky } from "./cholesky";
import { covariance } from "./covariance";
import { dotProduct } from "./dot-product";
import type { LookData } from "./look-data";
import type { NuisanceCell } from "./nuisance-grid";
import { whiten } from "./whiten";
import { whitenedSteps } from "./whitened-steps";

/** Fewest groups of a stretch that came and went, and fewest on either side of it: a shorter one is an odd group. */
const SHORTEST = 3;

/** A stretch of groups away from the level that held before and holds again, at one nuisance cell. */
export interface CameAndWent {
  /** Natural log of the mean Bayes factor over all such stretches against a flat level. */
  readonly logFactor: number;
  /** Level before and after the stretch: mean and variance of the mixture over stretches, less the look's origin. */
  readonly levelMean: number;
  readonly levelVariance: number;
}

/** Whether a look has room for such a stretch with enough groups on either side. */
export function hasRoom(count: number): boolean {
  return count >= 3 * SHORTEST;
}

/**
 * What a change that was taken back within the look says: the level left for three groups or more, then the old one again.
 *
 * `sizeVariance`: prior variance of the distance, normal about 0, in the unit squared. Every stretch with three groups at
 * least before, in and after it is equally likely. Without it a change that came and went is taken for large day
 * effects, and both the level and the spread of days are believed to be wider than they are.
 *
 * The whitened column of a stretch is the difference of two whitened steps; cost grows with the cube of the groups.
 * Source: the normal-normal Bayes factor of `fillShapeFactors`; Kass & Raftery (1995), JASA 90.
 */
export function cameAndWent(look: LookData, cell: NuisanceCell, sizeVariance: number): CameAndWent {
  const { count, start } = look;
  const factor = cholesky(covariance(look, cell), count);
  const white = whiten(factor, look.values, count);
  const { columns, products } = whitenedSteps(factor, count);
  const withValues = new Float64Array(count);
  for (let k = 0; k < count; k++) withValues[k] = dotProduct(columns, k * count, white, 0, count);
  // The step at the first group is the column of ones.
  const oneOne = (products[0] as number) + (start === null ? 0 : 1 / start.variance);
  const level = ((withValues[0] as number) + (start === null ? 0 : start.mean / start.variance)) / oneOne;
  const found: StretchSums = { peak: Number.NEGATIVE_INFINITY, stretches: 0, weight: 0, mean: 0, square: 0 };
  for (let from = SHORTEST; from + SHORTEST <= count - SHORTEST; from++) {
    for (let to = from + SHORTEST; to <= count - SHORTEST; to++) {
      const x1 = (products[from] as number) - (products[to] as number);
      const cross = products[from * count + to] as number;
      const xx = (products[from * count + from] as number) + (products[to * count + to] as number) - 2 * cross;
      const information = Math.max(0, xx - (x1 * x1) / oneOne);
      const score = (withValues[from] as number) - (withValues[to] as number) - x1 * level;
      const variance = 1 / (information + 1 / sizeVariance);
      const lean = x1 / oneOne;
      const shift = -lean * score * variance;
      const log = 0.5 * (score * score * variance - Math.log(1 + sizeVariance * information));
      add(found, log, shift, lean * lean * variance);
    }
  }
  const shift = found.mean / found.weight;
  return {
    logFactor: found.peak + Math.log(found.weight / found.stretches),
    levelMean: level + shift,
    levelVariance: 1 / oneOne + found.square / found.weight - shift * shift,
  };
}

/** Running sums over stretches, each weighed by exp(log factor - peak). */
interface StretchSums {
  peak: number;
  stretches: number;
  weight: number;
  mean: number;
  square: number;
}

function add(sums: StretchSums, log: number, shift: number, variance: number): void {
  if (log > sums.peak) {
    const less = Math.exp(sums.peak - log);
    sums.weight *= less;
    sums.mean *= less;
    sums.square *= less;
    sums.peak = log;
  }
  const weight = Math.exp(log - sums.peak);
  sums.stretches += 1;
  sums.weight += weight;
  sums.mean += weight * shift;
  sums.square += weight * (shift * shift + variance);
}
