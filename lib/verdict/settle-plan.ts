import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { Interval, SettlePlan } from "@/lib/domain/track-verdict";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { drawFuture, futureOf } from "./drawn-future";
import type { JudgedSeries } from "./judged-series";
import { type Policy, SETTLE_CARES, SETTLE_SWINGS } from "./policy";
import { settles } from "./quick-look";
import { spreadPoints } from "./spread-points";
import { thinNoise } from "./thin-noise";

/** What is believed of the track now; levels and sds in the unit. */
export interface SettleBelief {
  readonly level: Interval;
  readonly daySd: number;
  /** Sd of one swing, its reading error included. */
  readonly replicateSd: number;
}

/** One plan: so many further sessions of so many swings, with so much of the camera error that is usual. */
export interface Plan {
  readonly sessions: number;
  readonly swingsEach: number;
  readonly care: number;
}

/** Price of a plan; more care costs more the less of the camera error is left. */
export function planPrice(plan: Plan, policy: Policy): number {
  const each = policy.settleSessionPrice + policy.settleSwingPrice * plan.swingsEach;
  return plan.sessions * each * (plan.care < 1 ? policy.settleCarePrice : 1);
}

/**
 * The plan of least price among those that reach the chance asked for; null: the largest one doesn't.
 *
 * The chance is taken to grow with sessions, swings and care, so that few plans have to be worked out.
 *
 * @param chance share of drawn futures that a plan settles; it may answer 0 for any plan that falls short
 */
export function cheapestPlan(
  chance: (plan: Plan) => number,
  policy: Policy,
): { readonly plan: Plan; readonly chance: number } | null {
  const reaches = (plan: Plan): boolean => chance(plan) >= policy.settleChance;
  const cares = [...SETTLE_CARES].sort((a, b) => a - b);
  const swings = [...SETTLE_SWINGS].sort((a, b) => b - a);
  let best: Plan | null = null;
  for (const care of cares) {
    let fewest = 1;
    for (const swingsEach of swings) {
      const of = (sessions: number): Plan => ({ sessions, swingsEach, care });
      if (best !== null && planPrice(of(fewest), policy) >= planPrice(best, policy)) continue;
      if (!reaches(of(policy.settleSessions))) break;
      let enough: number = policy.settleSessions;
      while (fewest < enough) {
        const middle = Math.floor((fewest + enough) / 2);
        if (reaches(of(middle))) enough = middle;
        else fewest = middle + 1;
      }
      fewest = enough;
      if (best === null || planPrice(of(enough), policy) < planPrice(best, policy)) best = of(enough);
    }
    if (best === null) return null;
  }
  return best === null ? null : { plan: best, chance: chance(best) };
}

/** Chances of plans, each worked out once, and only as far as it takes to know that it falls short. */
function chanceOf(settled: (plan: Plan, draw: number) => boolean, policy: Policy): (plan: Plan) => number {
  const draws = Math.round(policy.settleDraws);
  const known = new Map<string, number>();
  const missesAllowed = Math.floor(draws * (1 - policy.settleChance) + 1e-9);
  return (plan) => {
    const key = `${plan.sessions}/${plan.swingsEach}/${plan.care}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    let misses = 0;
    for (let draw = 0; draw < draws && misses <= missesAllowed; draw++) {
      if (!settled(plan, draw)) misses++;
    }
    const chance = misses > missesAllowed ? 0 : 1 - misses / draws;
    known.set(key, chance);
    return chance;
  };
}

/**
 * What would settle an open track: the cheapest plan that does so with the chance asked for, or why there is none.
 *
 * Futures are drawn from what is believed of this track now, its level staying where it is; each is appended to the
 * real sessions, a usual gap apart, and judged by the engine at the plan's end, with a noise model of fewer cells. The
 * draws are evenly spread points, the same at every call, so the answer is a function of the track alone.
 *
 * @param belief null: no used session yet, so nothing to draw from
 */
export function settlePlan(
  track: JudgedTrack,
  judged: JudgedSeries,
  noise: NoiseModel,
  belief: SettleBelief | null,
  policy: Policy,
): SettlePlan {
  const used = judged.series.groups.filter((group) => group.used).length;
  const sessionsToFirstLook = Math.max(0, policy.firstLook - used);
  const none = { none: sessionsToFirstLook > 0 ? "first-look" : "no-plan", sessionsToFirstLook } as const;
  if (belief === null) return none;
  const thin = thinNoise(noise);
  const count = Math.round(policy.settleDraws);
  const future = futureOf(judged.series, belief, noise, count);
  const draws = spreadPoints(count, 3 * Math.round(policy.settleSessions));
  const worthwhile = track.smallestWorthwhile ?? null;
  const chance = chanceOf((plan, draw) => {
    const point = draws[draw] as Float64Array;
    return settles(drawFuture(judged.series, future, plan, draw, point), thin, worthwhile, policy);
  }, policy);
  const found = cheapestPlan(chance, policy);
  if (found === null) return none;
  return {
    sessions: found.plan.sessions,
    swingsEach: found.plan.swingsEach,
    captureSd: future.captureSd * found.plan.care,
    chance: found.chance,
  };
}
