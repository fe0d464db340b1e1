import { noncentralTCdf, noncentralTUpperTail } from "./noncentral-t-distribution";
import { type Outcome, ok, tooFew } from "./outcome";
import { requirePositive } from "./require-positive";
import { requireProbability } from "./require-probability";
import { tQuantile } from "./t-distribution";

/** What a t test compares: one list (or the differences of pairs) with a fixed mean, or two lists of one size. */
export type TTestDesign = "one-sample" | "paired" | "two-sample";

/** Departures that count: either way, or upwards alone. */
export type TTestSides = "two-sided" | "one-sided";

/** A planned t test. */
export interface TTestPlan {
  readonly design: TTestDesign;
  readonly sides: TTestSides;
  /** True difference in sds: of the values, of the differences of pairs, or the common sd of two lists. */
  readonly effect: number;
  /** Chance of a false alarm, 0.05 for 5 of 100. */
  readonly level: number;
}

/**
 * Chance that a planned t test finds the difference that is there.
 *
 * `plan`: see its fields; `size`: values of the one list, pairs, or values of each of two lists; it needn't be whole.
 * Result between 0 and 1; two-sided, both tails count. Size below 2: too-few, counting values. Bad input: NaN, infinity, a
 * size that isn't above 0, or a level outside 0 to 1, throws a RangeError. Assumes independent normal values of one variance.
 *
 * Source: Cohen, J. (1988), Statistical Power Analysis for the Behavioral Sciences, 2nd ed., 2; by the exact
 * noncentral t instead of its tables.
 */
export function tTestPower(plan: TTestPlan, size: number): Outcome<number> {
  requireProbability(plan.level, "level");
  requirePositive(size, "size");
  if (!Number.isFinite(plan.effect)) throw new RangeError(`effect must be a finite number, got ${plan.effect}`);
  if (size < 2) return tooFew(size, 2);
  const lists = plan.design === "two-sample" ? 2 : 1;
  const degrees = lists * (size - 1);
  const centre = plan.effect * Math.sqrt(size / lists);
  if (plan.sides === "one-sided") return ok(noncentralTUpperTail(-tQuantile(plan.level, degrees), degrees, centre));
  const critical = -tQuantile(plan.level / 2, degrees);
  return ok(noncentralTUpperTail(critical, degrees, centre) + noncentralTCdf(-critical, degrees, centre));
}
