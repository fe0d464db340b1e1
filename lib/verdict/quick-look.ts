import { evidenceOf, FIRST_LOOK } from "@/lib/stats/evidence";
import { lookData } from "@/lib/stats/look-data";
import { mixtureCdf } from "@/lib/stats/mixture-cdf";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { normalMixture } from "@/lib/stats/normal-mixture";
import { posteriorComponents } from "@/lib/stats/posterior-components";
import { posteriorWeights } from "@/lib/stats/posterior-weights";
import type { Series } from "@/lib/stats/series";
import { limitAt } from "./limit-at";
import type { Policy } from "./policy";

/**
 * Whether a look would settle an open track: a change proved either way, or proved to hold.
 *
 * The same engine and rules as the verdict, without the intervals that nobody asks of a drawn future.
 *
 * @param series sessions up to the look; fewer than four used ones settle nothing
 * @param smallestWorthwhile in the unit; null: so many sds of one session mean at this look
 */
export function settles(series: Series, noise: NoiseModel, smallestWorthwhile: number | null, policy: Policy): boolean {
  const look = lookData(series, noise);
  if (look.count < FIRST_LOOK) return false;
  const parts = posteriorComponents(look);
  const { logBayesFactor, directionUp } = evidenceOf(look, parts.gathered);
  const certain = directionUp >= policy.direction || directionUp <= 1 - policy.direction;
  if (certain && logBayesFactor >= limitAt(series.groups.length, policy)) return true;
  const weights = posteriorWeights(look, parts);
  const daySd = look.cells.reduce((mean, cell, g) => mean + cell.daySd * (weights.cells[g] as number), 0);
  const worthwhile = smallestWorthwhile ?? policy.smallestWorthwhile * Math.sqrt(daySd * daySd + look.meanVariance);
  const inner = worthwhile / policy.steadyInner;
  if (weights.noChange >= policy.steadyProbability) return true;
  const change = normalMixture(weights.changed, parts.sizeMeans, parts.sizeVariances);
  const moved = mixtureCdf(change, inner) - mixtureCdf(change, -inner);
  return weights.noChange + (1 - weights.noChange) * moved >= policy.steadyProbability;
}
