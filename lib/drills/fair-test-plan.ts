import { looksSize } from "@/lib/stats/looks-size";
import { COMPARE_THRESHOLDS } from "@/lib/verdict/compare-thresholds";
import { FAIR_TEST_THRESHOLDS } from "./fair-test-thresholds";

/** What a test by the lot is planned from, in the fundamental's unit. */
export interface FairPlanWish {
  /** The least difference worth finding, above 0. */
  readonly least: number;
  /** Sd of what students gain, above 0. */
  readonly spread: number;
  /** From 1. */
  readonly looks: number;
}

/** How many students a test takes, both drills together. */
export type FairPlan =
  | { readonly kind: "ok"; readonly students: number }
  | { readonly kind: "out-of-reach"; readonly most: number };

/** More than an academy ever draws. */
const MOST = 1000;

/**
 * How many students are to be drawn, so that a difference of the least size worth finding is found with the chance of
 * `FAIR_TEST_THRESHOLDS.power`, at any of the looks.
 *
 * @returns an even number, both drills together, and ten a drill at least: with fewer the lot has too few orders for any to be rare,
 *   and no drill is judged here under ten; `out-of-reach`: more than 1000. Bad input as in `looksSize` throws a RangeError.
 *   Assumes that gains scatter about normally; students whose film never comes are to be added to it.
 */
export function planFairTest({ least, spread, looks }: FairPlanWish): FairPlan {
  const { level, power } = FAIR_TEST_THRESHOLDS;
  const size = looksSize({ effect: least / spread, looks, level: level.value, power: power.value });
  if (size.kind !== "ok" || 2 * size.whole > MOST) return { kind: "out-of-reach", most: MOST };
  return { kind: "ok", students: 2 * Math.max(size.whole, COMPARE_THRESHOLDS.judged.value) };
}
