import type { ExcludingPlan } from "@/lib/domain/track-verdict";
import { largestPlan, type Plan } from "./cheapest-plan";
import type { LookBelief } from "./look-belief";
import { askedPlan, type Futures, futuresOf, type Planning } from "./plan-futures";
import { changeBelow } from "./quick-look";

/** Quantile of few draws: the k-th of n stands for k / (n + 1), on the safe side (Weibull 1939), straight lines between. */
function quantile(values: readonly number[], probability: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const place = Math.min(sorted.length - 1, Math.max(0, probability * (sorted.length + 1) - 1));
  const below = sorted[Math.floor(place)] as number;
  const above = sorted[Math.ceil(place)] as number;
  return below + (place - Math.floor(place)) * (above - below);
}

/** The size below which a plan shows any change to lie, with the chance asked for; null: still too few sessions for a look. */
export function limitIfNothing({ thin, policy }: Planning, still: Futures, plan: Plan): number | null {
  const limits: number[] = [];
  for (let draw = 0; draw < still.count; draw++) {
    const limit = changeBelow(still.of(plan, draw), thin, policy);
    if (limit === null) return null;
    limits.push(limit);
  }
  return quantile(limits, policy.settleChance);
}

/**
 * The size below which the largest plan shows any change to lie, with the chance asked for, if nothing has changed and
 * nothing will.
 *
 * @param cares shares of the usual camera error that can be had
 * @returns null where even then there are too few sessions for a look
 */
export function settleIfNothing(planning: Planning, now: LookBelief, cares: readonly number[]): ExcludingPlan | null {
  const { policy } = planning;
  const ahead = futuresOf(planning, now.unchanged(), Math.round(policy.settleExcludeDraws));
  const largest = largestPlan(policy, cares);
  const limit = limitIfNothing(planning, ahead, largest);
  return limit === null ? null : { ...askedPlan(largest, ahead.captureSd, policy.settleChance), changeBelow: limit };
}
