import { requireProbability } from "./require-probability";
import { type TTestPlan, tTestPower } from "./t-test-power";

/** How many values a t test takes. */
export type TTestSize =
  | {
      readonly kind: "ok";
      /** Where the power is exactly as wanted; 2 where two values already have it. */
      readonly exact: number;
      /** Whole values (pairs, values of each list) that have it. */
      readonly whole: number;
    }
  | { readonly kind: "out-of-reach"; readonly most: number };

/** No plan is made for more values than this; an effect that needs more is called out of reach. */
const MOST = 1e7;

/** Halvings of a bracket: more than a double can tell apart. */
const BISECTIONS = 100;

/**
 * Number of values (pairs, or values of each of two lists) with which a planned t test has the wanted power.
 *
 * `plan`: as in `tTestPower`; `power`: 0.8 for 80 of 100. One-sided, the effect must point upwards to be found. An
 * effect that ten million values don't show, 0 among them: out-of-reach. Bad input: as `tTestPower`, or a power
 * outside 0 to 1, throws a RangeError. Assumptions as there.
 *
 * Source: Cohen, J. (1988), Statistical Power Analysis for the Behavioral Sciences, 2nd ed., 2.4; by bisection on the
 * exact power, so that for an effect of 0.2 it says 394 where his table, interpolated, says 393.
 */
export function tTestSize(plan: TTestPlan, power: number): TTestSize {
  requireProbability(power, "power");
  const has = (size: number): boolean => {
    const outcome = tTestPower(plan, size);
    return outcome.kind === "ok" && outcome.value >= power;
  };
  if (has(2)) return { kind: "ok", exact: 2, whole: 2 };
  let high = 4;
  while (high <= MOST && !has(high)) high *= 2;
  if (high > MOST) return { kind: "out-of-reach", most: MOST };
  let low = high / 2;
  for (let round = 0; round < BISECTIONS; round++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (has(middle)) high = middle;
    else low = middle;
  }
  return { kind: "ok", exact: high, whole: Math.ceil(high) };
}
