import type { ExcludingPlan } from "@/lib/domain/track-verdict";
import { largestPlan } from "./cheapest-plan";
import type { LookBelief } from "./look-belief";
import { askedPlan, futuresOf, type Planning } from "./plan-futures";
import { changeBelow } from "./quick-look";

/**
 * The size below which the largest plan shows any change to lie, with the chance asked for, if nothing has changed and
 * nothing will.
 *
 * @param cares shares of the usual camera error that can be had
 * @returns null where even then there are too few sessions for a look
 */
export function settleIfNothing(planning: Planning, now: LookBelief, cares: readonly number[]): ExcludingPlan | null {
  const { thin, policy } = planning;
  const ahead = futuresOf(planning, now.unchanged(), Math.round(policy.settleExcludeDraws));
  const largest = largestPlan(policy, cares);
  const limits: number[] = [];
  for (let draw = 0; draw < ahead.count; draw++) {
    const limit = changeBelow(ahead.of(largest, draw), thin, policy);
    if (limit === null) return null;
    limits.push(limit);
  }
  limits.sort((a, b) => a - b);
  const enough = Math.ceil(policy.settleChance * ahead.count - 1e-9);
  return { ...askedPlan(largest, ahead.captureSd, enough / ahead.count), changeBelow: limits[enough - 1] as number };
}
