import tCdf from "@stdlib/stats-base-dists-t-cdf";
import { cholesky } from "./cholesky";
import { covariance } from "./covariance";
import { dotProduct } from "./dot-product";
import { logSum } from "./log-sum";
import type { Trend } from "./look";
import { lookData } from "./look-data";
import type { NoiseModel } from "./noise-model";
import { type Outcome, ok, tooFew } from "./outcome";
import type { Series } from "./series";
import { whiten } from "./whiten";

/**
 * Straight-line slope over days, in the unit per day, with its 95 of 100 interval; the median of belief.
 *
 * Generalised least squares at each nuisance cell, averaged over cells by their restricted likelihood; each
 * cell speaks as a t distribution with n - 2 degrees of freedom, so that few groups give wide intervals. A
 * starting belief isn't used. Too few: fewer than three used groups (counted in used groups), or groups that
 * all lie on one day (counted in days, of which it takes two). Throws on bad input with the offending value.
 *
 * Source: Harville (1977), Maximum likelihood approaches to variance component estimation, JASA 72.
 */
export function trend(series: Series, noise: NoiseModel): Outcome<Trend> {
  const look = lookData(series, noise);
  const { count, groups } = look;
  if (count < 3) return tooFew(count, 3);
  const firstDay = groups[0]?.day ?? 0;
  const days = Float64Array.from(groups, (group) => group.day - firstDay);
  if ((days[count - 1] as number) === 0) return tooFew(1, 2);
  const ones = new Float64Array(count).fill(1);
  const logs: number[] = [];
  const slopes: number[] = [];
  const scales: number[] = [];
  for (const cell of look.cells) {
    const factor = cholesky(covariance(look, cell), count);
    const y = whiten(factor, look.values, count);
    const one = whiten(factor, ones, count);
    const x = whiten(factor, days, count);
    const s11 = dot(one, one);
    const a = dot(x, x) - dot(x, one) ** 2 / s11;
    const b = dot(x, y) - (dot(x, one) * dot(one, y)) / s11;
    let halfLogDeterminant = 0;
    for (let i = 0; i < count; i++) halfLogDeterminant += Math.log(factor[i * count + i] as number);
    const residual = dot(y, y) - dot(one, y) ** 2 / s11 - (b * b) / a;
    logs.push(cell.logWeight - halfLogDeterminant - 0.5 * Math.log(s11 * a) - 0.5 * residual);
    slopes.push(b / a);
    scales.push(1 / Math.sqrt(a));
  }
  const total = logSum(logs);
  const weights = logs.map((log) => Math.exp(log - total));
  const quantile = (probability: number): number => tMixtureQuantile(weights, slopes, scales, count - 2, probability);
  return ok({ perDay: quantile(0.5), low95: quantile(0.025), high95: quantile(0.975) });
}

function dot(a: Float64Array, b: Float64Array): number {
  return dotProduct(a, 0, b, 0, a.length);
}

/**
 * Root of the distribution function of a mixture of t distributions of equal degrees of freedom, by false
 * position (Illinois), each step kept inside the bracket; exact to 1e-8 of the largest scale.
 */
function tMixtureQuantile(
  weights: readonly number[],
  centres: readonly number[],
  scales: readonly number[],
  degreesOfFreedom: number,
  probability: number,
): number {
  const excess = (x: number): number => {
    let sum = -probability;
    weights.forEach((weight, g) => {
      if (weight > 1e-9) sum += weight * tCdf((x - (centres[g] as number)) / (scales[g] as number), degreesOfFreedom);
    });
    return sum;
  };
  const reach = Math.max(...scales);
  const centre = weights.reduce((sum, weight, g) => sum + weight * (centres[g] as number), 0);
  let low = centre - reach;
  let high = centre + reach;
  let below = excess(low);
  let above = excess(high);
  for (let span = reach; below > 0; span *= 2) {
    low -= span;
    below = excess(low);
  }
  for (let span = reach; above < 0; span *= 2) {
    high += span;
    above = excess(high);
  }
  let kept: "low" | "high" | null = null;
  for (let round = 0; round < 100 && high - low > 1e-8 * reach; round++) {
    const x = (low * above - high * below) / (above - below);
    const at = excess(x);
    if (Math.abs(at) < 1e-10) return x;
    if (at < 0) {
      low = x;
      below = at;
      if (kept === "high") above /= 2;
      kept = "high";
    } else {
      high = x;
      above = at;
      if (kept === "low") below /= 2;
      kept = "low";
    }
  }
  return (low + high) / 2;
}
