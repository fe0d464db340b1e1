import type { NoiseModel } from "@/lib/stats/noise-model";
import type { Series } from "@/lib/stats/series";
import { cheapestPlan, type Plan } from "./cheapest-plan";
import { drawFuture, futureOf, type LevelBelief } from "./drawn-future";
import { CAMERA_ALLOWANCE } from "./plan-progress";
import { type Policy, SETTLE_CARES } from "./policy";
import { spreadPoints } from "./spread-points";
import { thinNoise } from "./thin-noise";

/** One track for which further sessions are planned. */
export interface Planning {
  readonly series: Series;
  readonly noise: NoiseModel;
  /** The noise model of fewer cells with which drawn futures are judged. */
  readonly thin: NoiseModel;
  readonly policy: Policy;
}

/** Opens the planning of a track of at least one used session. */
export function planningOf(series: Series, noise: NoiseModel, policy: Policy): Planning {
  return { series, noise, thin: thinNoise(noise), policy };
}

/** Futures of a track under one belief: the real sessions with a plan's drawn ones appended, a usual gap apart. */
export interface Futures {
  readonly count: number;
  /** Median camera sd of the used sessions. */
  readonly captureSd: number;
  of(plan: Plan, draw: number): Series;
}

/** Futures drawn from a belief; evenly spread, the same at every call. */
export function futuresOf({ series, noise, policy }: Planning, belief: LevelBelief, count: number): Futures {
  const future = futureOf(series, belief, noise, count);
  const points = spreadPoints(count, 3 * Math.round(policy.settleSessions));
  return {
    count,
    captureSd: future.captureSd,
    of: (plan, draw) => drawFuture(series, future, plan, draw, points[draw] as Float64Array),
  };
}

/**
 * Shares of the usual camera error that can be had.
 *
 * @param captureSd the usual error
 * @param checked what a check leaves of it; undefined: not known, so every share is taken as possible
 */
export function attainableCares(captureSd: number, checked: number | undefined): readonly number[] {
  return SETTLE_CARES.filter(
    (care) => care === 1 || checked === undefined || checked <= captureSd * care * CAMERA_ALLOWANCE,
  );
}

/** A plan with its chance, its camera care as an sd in the unit. */
export interface AskedPlan {
  readonly sessions: number;
  readonly swingsEach: number;
  readonly captureSd: number;
  readonly chance: number;
}

/** A plan as it is asked for. */
export function askedPlan(plan: Plan, captureSd: number, chance: number): AskedPlan {
  const { sessions, swingsEach, care } = plan;
  return { sessions, swingsEach, captureSd: captureSd * care, chance };
}

/** Chances of plans, each worked out once, and only as far as it takes to know that it falls short. */
function chanceOf(told: (plan: Plan, draw: number) => boolean, draws: number, policy: Policy): (plan: Plan) => number {
  const known = new Map<string, number>();
  const missesAllowed = Math.floor(draws * (1 - policy.settleChance) + 1e-9);
  return (plan) => {
    const key = `${plan.sessions}/${plan.swingsEach}/${plan.care}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    let misses = 0;
    for (let draw = 0; draw < draws && misses <= missesAllowed; draw++) {
      if (!told(plan, draw)) misses++;
    }
    const chance = misses > missesAllowed ? 0 : 1 - misses / draws;
    known.set(key, chance);
    return chance;
  };
}

/** The cheapest plan after which enough of the futures are told; null: there is none. */
export function cheapestTelling(
  ahead: Futures,
  told: (series: Series) => boolean,
  policy: Policy,
  cares: readonly number[],
): { readonly plan: Plan; readonly chance: number } | null {
  return cheapestPlan(
    chanceOf((plan, draw) => told(ahead.of(plan, draw)), ahead.count, policy),
    policy,
    cares,
  );
}

/** Share of the futures that a plan tells. */
export function shareTold(ahead: Futures, plan: Plan, told: (series: Series) => boolean): number {
  let count = 0;
  for (let draw = 0; draw < ahead.count; draw++) if (told(ahead.of(plan, draw))) count++;
  return count / ahead.count;
}
