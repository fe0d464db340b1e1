import { type Outcome, ok, tooFew } from "./outcome";
import { theilSen } from "./theil-sen";

/** What of a series is correlated: its values, or their ranks from 1 with ties sharing the mean. */
export type Correlated = "values" | "ranks";

/**
 * Autocorrelations of an evenly spaced series after its Theil-Sen line is taken off.
 *
 * `values`: in the order taken, evenly spaced, one unit. The result holds the correlation at lag 1 first, up to lag n - 1: sums of
 * products of deviations over the sum of all squared deviations, each -1 to 1. Fewer than two values: too-few, counting values.
 * Nothing left beside the line: too-few, counting different residuals (1 of 2). Bad input: NaN or infinity throws a
 * RangeError. Assumes even spacing.
 *
 * Source: Hamed, K.H. & Rao, A.R. (1998), Journal of Hydrology 204, 182-196; Yue, S. & Wang, C.Y. (2004), Water Resources
 * Management 18, 201-218.
 */
export function detrendedAutocorrelation(
  values: readonly number[],
  correlated: Correlated,
): Outcome<readonly number[]> {
  const count = values.length;
  const line = theilSen(
    values.map((_, i) => i),
    values,
    0.95,
  );
  if (line.kind !== "ok") return line;
  const level = Math.max(...values.map(Math.abs));
  const residuals = values.map((value, i) => value - line.value.slope * i);
  const same = (a: number, b: number) => Math.abs(a - b) <= ROUNDING * level;
  const first = residuals[0] as number;
  if (residuals.every((value) => same(value, first))) return tooFew(1, 2);
  const series = correlated === "values" ? residuals : ranksOf(residuals, same);
  const mean = series.reduce((sum, value) => sum + value, 0) / count;
  const deviations = series.map((value) => value - mean);
  const squares = deviations.reduce((sum, value) => sum + value * value, 0);
  return ok(
    Array.from({ length: count - 1 }, (_, index) => {
      let products = 0;
      for (let i = index + 1; i < count; i++)
        products += (deviations[i] as number) * (deviations[i - index - 1] as number);
      return products / squares;
    }),
  );
}

/** Residuals that differ by less than this share of the largest value are tied: taking the line off rounds. */
const ROUNDING = 1e-13;

/** Ranks from 1; ties share the mean of theirs. */
function ranksOf(values: readonly number[], same: (a: number, b: number) => boolean): number[] {
  return values.map((value) => {
    const tied = values.filter((other) => same(other, value)).length;
    const below = values.filter((other) => other < value && !same(other, value)).length;
    return below + (tied + 1) / 2;
  });
}
