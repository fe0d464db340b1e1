import { evidence, evidenceOf, FIRST_LOOK } from "@/lib/stats/evidence";
import { type LookData, lookData } from "@/lib/stats/look-data";
import { mixtureCdf } from "@/lib/stats/mixture-cdf";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { normalMixture } from "@/lib/stats/normal-mixture";
import { type PosteriorComponents, posteriorComponents } from "@/lib/stats/posterior-components";
import { posteriorWeights } from "@/lib/stats/posterior-weights";
import { withRecentDoubt } from "@/lib/stats/recent-doubt";
import type { Series } from "@/lib/stats/series";
import { unitVariance } from "@/lib/stats/unit-variance";
import { limitAt } from "./limit-at";
import type { Policy } from "./policy";
import { type HeldEvidence, provedDirection } from "./proved-direction";

/** The smallest worthwhile change in the unit, given the sd of one session mean at the look. */
export type Worthwhile = (unitSd: number) => number;

/**
 * What a look says of a change now: how sure any is smaller than a limit, and the sd of one session mean.
 *
 * A change of the last one or two sessions is doubted more than others, and after the early looks the limit is divided by
 * more, because every look is one more chance to be wrong.
 */
function changeNow(look: LookData, found: PosteriorComponents, policy: Policy) {
  const parts = withRecentDoubt(look, found, policy.steadyLastAlone, policy.steadyLastTwo);
  const weights = posteriorWeights(look, parts);
  const divisor = look.count <= policy.steadyEarlyLooks ? policy.steadyInnerEarly : policy.steadyInner;
  const daySd = look.cells.reduce((mean, cell, g) => mean + cell.daySd * (weights.cells[g] as number), 0);
  const change = normalMixture(weights.changed, parts.sizeMeans, parts.sizeVariances);
  return {
    unitSd: Math.sqrt(unitVariance(look, daySd)),
    isBelow: (limit: number): boolean => {
      const inner = limit / divisor;
      const within = mixtureCdf(change, inner) - mixtureCdf(change, -inner);
      return weights.noChange + (1 - weights.noChange) * within >= policy.steadyProbability;
    },
  };
}

/** Whether any change now is as good as certain to be smaller than the smallest worthwhile one. */
function provedSteady(look: LookData, parts: PosteriorComponents, worthwhile: Worthwhile, policy: Policy): boolean {
  const now = changeNow(look, parts, policy);
  return now.isBelow(worthwhile(now.unitSd));
}

/** Halvings to the limit below which a change lies; each halves the doubt of the last. */
const HALVINGS = 24;

/**
 * The smallest limit in the unit that any change now is as good as certain to lie below, by the very rule that proves a
 * track to hold: were it the smallest worthwhile change, the track would hold.
 *
 * @param series sessions up to the look
 * @returns null with fewer than four used sessions
 */
export function changeBelow(series: Series, noise: NoiseModel, policy: Policy): number | null {
  const look = lookData(series, noise);
  if (look.count < FIRST_LOOK) return null;
  const { isBelow, unitSd } = changeNow(look, posteriorComponents(look), policy);
  let high = policy.smallestWorthwhile * unitSd;
  while (!isBelow(high)) high *= 2;
  let low = 0;
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    if (isBelow(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/**
 * Whether a track is proved to hold at a look: the engine's own answer, without the intervals that nobody asks for.
 *
 * @param series sessions up to the look; fewer than four used ones prove nothing
 */
export function steadyAt(series: Series, noise: NoiseModel, worthwhile: Worthwhile, policy: Policy): boolean {
  const look = lookData(series, noise);
  if (look.count < FIRST_LOOK) return false;
  return provedSteady(look, posteriorComponents(look), worthwhile, policy);
}

/** The evidence of the look before the last used session; null: it came before the first look. */
export function heldBefore(series: Series, noise: NoiseModel, policy: Policy): HeldEvidence | null {
  const last = series.groups.findLastIndex((group) => group.used);
  const end = series.groups.slice(0, Math.max(0, last)).findLastIndex((group) => group.used) + 1;
  const found = evidence({ ...series, groups: series.groups.slice(0, end) }, noise);
  return found.kind === "ok" ? { evidence: found.value, limit: limitAt(end, policy) } : null;
}

/**
 * Whether a look would settle an open track: a change proved either way, or proved to hold.
 *
 * @param series sessions up to the look; fewer than four used ones settle nothing
 */
export function settles(series: Series, noise: NoiseModel, worthwhile: Worthwhile, policy: Policy): boolean {
  const look = lookData(series, noise);
  if (look.count < FIRST_LOOK) return false;
  const parts = posteriorComponents(look);
  const now = { evidence: evidenceOf(look, parts.gathered), limit: limitAt(series.groups.length, policy) };
  if (provedDirection(now, () => heldBefore(series, noise, policy), policy) !== null) return true;
  return provedSteady(look, parts, worthwhile, policy);
}
