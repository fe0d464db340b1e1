import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";
import { requirePositive } from "./require-positive";

/** How a cusum chart is set up, all in the unit of the values. */
export interface CusumSettings {
  /** The mean in control. */
  readonly target: number;
  /** Taken off each departure before it is added up: half the shift to be found; 0 or more. */
  readonly slack: number;
  /** A sum above this signals. */
  readonly limit: number;
}

/** One side of a cusum chart. */
export interface CusumSide {
  /** As long as the values and in their order, 0 or more, in the unit. */
  readonly sums: readonly number[];
  /** The first sum above the limit; `index` counts from 0, `start` is the first value of the run of sums above 0 that led there. */
  readonly signal:
    | { readonly kind: "none" }
    | { readonly kind: "signal"; readonly index: number; readonly start: number };
}

/** A two-sided cusum chart. */
export interface CusumChart {
  readonly upper: CusumSide;
  readonly lower: CusumSide;
}

/**
 * Cumulative sums of departures above and below a target, each held at 0 from below, with their first signals.
 *
 * `values`: in order, one unit; `settings`: see its fields. After a signal the sums go on as they stand. No value:
 * too-few, counting values. Bad input: NaN, infinity, a limit that isn't above 0 or a slack below 0 throws a
 * RangeError. Assumes independent values.
 *
 * Source: Page, E.S. (1954), Biometrika 41, 100-115; tabular form of the NIST/SEMATECH e-Handbook, 6.3.2.3.
 */
export function cusumChart(values: readonly number[], settings: CusumSettings): Outcome<CusumChart> {
  const { target, slack, limit } = settings;
  requireFinite(values, "values");
  requireFinite([target], "target");
  requirePositive(limit, "limit");
  if (!(slack >= 0 && Number.isFinite(slack))) throw new RangeError(`slack must be 0 or more, got ${slack}`);
  if (values.length === 0) return tooFew(0, 1);
  const side = (departures: readonly number[]): CusumSide => {
    const sums: number[] = [];
    let sum = 0;
    for (const departure of departures) {
      sum = Math.max(0, sum + departure - slack);
      sums.push(sum);
    }
    const index = sums.findIndex((one) => one > limit);
    if (index < 0) return { sums, signal: { kind: "none" } };
    return { sums, signal: { kind: "signal", index, start: sums.slice(0, index).lastIndexOf(0) + 1 } };
  };
  return ok({
    upper: side(values.map((value) => value - target)),
    lower: side(values.map((value) => target - value)),
  });
}
