import type { ConditionalPlan, Direction } from "@/lib/domain/track-verdict";
import type { Series } from "@/lib/stats/series";
import { largestPlan } from "./cheapest-plan";
import type { LookBelief } from "./look-belief";
import { askedPlan, cheapestTelling, futuresOf, type Planning, shareTold } from "./plan-futures";
import type { Policy } from "./policy";
import { proves } from "./proves";

/** Which way a look points, and how far that can be trusted. */
export interface Pointing {
  readonly direction: Direction;
  /** Of a lasting change that way. */
  readonly probability: number;
  /** Share of the change's weight that goes this way, .5 to 1. */
  readonly certainty: number;
}

/**
 * Which way a look points.
 *
 * @param noChange probability that nothing lasting happened
 * @param directionUp share of the change's weight that points up
 */
export function pointingOf(noChange: number, directionUp: number): Pointing {
  const certainty = Math.max(directionUp, 1 - directionUp);
  return { direction: directionUp >= 0.5 ? "up" : "down", probability: (1 - noChange) * certainty, certainty };
}

/** A change that a look points to: how big it looks, and the belief in changes that way of at least that size. */
export interface MeantChange {
  readonly direction: Direction;
  /** Mean of the belief in changes that way, in the unit; above 0 for up. */
  readonly size: number;
  /** Of a lasting change that way of at least that size. */
  readonly probability: number;
  readonly likely: NonNullable<ReturnType<LookBelief["changed"]>>;
  readonly meant: NonNullable<ReturnType<LookBelief["changed"]>>;
}

/** The change that a look points to; null: it points nowhere, or comes before the first that can. */
export function meantChange(
  now: LookBelief,
  { direction, probability, certainty }: Pointing,
  policy: Policy,
): MeantChange | null {
  if (probability < policy.settlePointing || certainty < policy.settleDirection) return null;
  const likely = now.changed(direction, 0);
  const meant = likely === null ? null : now.changed(direction, Math.abs(likely.size));
  if (likely === null || meant === null) return null;
  return { direction, size: likely.size, probability: (probability * meant.share) / likely.share, likely, meant };
}

/**
 * The cheapest plan after which the change that a look points to stands proved with the chance asked for, if it is real
 * and at least as big as it looks, its level staying where it then is; or how far even the largest plan reaches.
 *
 * As big as it looks is the mean of the belief in changes that way; the belief narrowed to those at least as big is
 * drawn from. What is proved on the way and held counts, as the looks count it.
 *
 * @param cares shares of the usual camera error that can be had
 * @returns null where the look points nowhere, or comes before the first that can
 */
export function settleIfReal(
  planning: Planning,
  now: LookBelief,
  pointing: Pointing,
  cares: readonly number[],
): ConditionalPlan | null {
  const { series, thin, policy } = planning;
  const pointed = meantChange(now, pointing, policy);
  if (pointed === null) return null;
  const { likely, meant, ...condition } = pointed;
  const { direction } = condition;
  const count = Math.round(policy.settleDraws);
  const asBig = futuresOf(planning, meant, count);
  const proved = (future: Series): boolean => proves(future, series.groups.length, thin, direction, policy);
  const bestChance = shareTold(asBig, largestPlan(policy, cares), proved);
  const found = bestChance < policy.settleChance ? null : cheapestTelling(asBig, proved, policy, cares);
  if (found === null) return { ...condition, none: "no-plan", bestChance };
  return {
    ...condition,
    ...askedPlan(found.plan, asBig.captureSd, found.chance),
    chanceAnySize: shareTold(futuresOf(planning, likely, count), found.plan, proved),
  };
}
