import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";
import { requirePositive } from "./require-positive";

/** How an EWMA chart is set up; target and sd in the unit of the values. */
export interface EwmaSettings {
  /** The mean in control; the average starts there. */
  readonly target: number;
  /** Known sd of one value. */
  readonly sd: number;
  /** Weight of the newest value, above 0 to 1. */
  readonly weight: number;
  /** Distance of the limits from the target in sds of the average. */
  readonly limit: number;
  /** Limits that widen with the average's own variance from the first value on, or those that it nears in the end. */
  readonly limits: "growing" | "settled";
}

/** Where a chart first left its limits. */
export type ChartSignal =
  | { readonly kind: "none" }
  | { readonly kind: "signal"; readonly index: number; readonly side: "above" | "below" };

/** An EWMA chart: lists as long as the values and in their order, in the unit. */
export interface EwmaChart {
  readonly averages: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
  /** The first average outside its limits; its index counts from 0. */
  readonly signal: ChartSignal;
}

/**
 * Exponentially weighted moving average of values taken in order, with its limits and its first signal.
 *
 * `values`: in order, one unit; `settings`: see its fields. Each average is weight times the value plus the rest of the
 * average before; the variance after t values is sd^2 weight / (2 - weight) (1 - (1 - weight)^2t). No value: too-few,
 * counting values. Bad input: NaN, infinity, an sd or limit not above 0, or a weight outside (0, 1] throws a
 * RangeError. Assumes independent values of one known sd.
 *
 * Source: Roberts, S.W. (1959), Technometrics 1, 239-250; limits after Lucas, J.M. & Saccucci, M.S. (1990),
 * Technometrics 32, 1-12.
 */
export function ewmaChart(values: readonly number[], settings: EwmaSettings): Outcome<EwmaChart> {
  const { target, sd, weight, limit } = settings;
  requireFinite(values, "values");
  requireFinite([target], "target");
  requirePositive(sd, "sd");
  requirePositive(limit, "limit");
  if (!(weight > 0 && weight <= 1)) throw new RangeError(`weight must lie above 0, to 1, got ${weight}`);
  if (values.length === 0) return tooFew(0, 1);
  const averages: number[] = [];
  let average = target;
  for (const value of values) {
    average = weight * value + (1 - weight) * average;
    averages.push(average);
  }
  const settled = limit * sd * Math.sqrt(weight / (2 - weight));
  const reach = values.map((_, i) =>
    settings.limits === "settled" ? settled : settled * Math.sqrt(1 - (1 - weight) ** (2 * (i + 1))),
  );
  const index = averages.findIndex((one, i) => Math.abs(one - target) > (reach[i] as number));
  return ok({
    averages,
    low: reach.map((one) => target - one),
    high: reach.map((one) => target + one),
    signal:
      index < 0
        ? { kind: "none" }
        : { kind: "signal", index, side: (averages[index] as number) > target ? "above" : "below" },
  });
}
