import { type Policy, SETTLE_CARES, SETTLE_SWINGS } from "./policy";

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
 * @param allowed shares of the usual camera error that may be asked for
 */
export function cheapestPlan(
  chance: (plan: Plan) => number,
  policy: Policy,
  allowed: readonly number[] = SETTLE_CARES,
): { readonly plan: Plan; readonly chance: number } | null {
  const reaches = (plan: Plan): boolean => chance(plan) >= policy.settleChance;
  const cares = [...allowed].sort((a, b) => a - b);
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

/** The plan of the greatest chance: the most sessions and swings, with the most care. */
export function largestPlan(policy: Policy, allowed: readonly number[] = SETTLE_CARES): Plan {
  return {
    sessions: Math.round(policy.settleSessions),
    swingsEach: Math.max(...SETTLE_SWINGS),
    care: Math.min(...allowed),
  };
}
