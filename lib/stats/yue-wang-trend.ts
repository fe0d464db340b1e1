import { detrendedAutocorrelation } from "./detrended-autocorrelation";
import { tooFew } from "./outcome";
import { type SerialTrendOutcome, serialTrend } from "./serial-trend";

/**
 * Mann-Kendall test with the variance that Yue and Wang correct for serial correlation of the values.
 *
 * `values`: in the order taken, evenly spaced, one unit; `lags`: how many lags count, whole, 1 to n - 1. With 1 the series is taken
 * as a first-order one seen at its first lag alone; with all of them the correlations' own constraint cancels most of the
 * correction (0.995 on the Nile), so few lags are of use. Fewer than three values: too-few, counting values. A straight
 * line: too-few, counting different residuals (1 of 2). A corrected variance of 0 or less: no-variance. Bad input: NaN, infinity or
 * lags that can't be throws a RangeError. Assumes a stationary series about a line, and many values: of 60
 * with 0.5 from one to the next and no trend, about 13 of 100 were called a trend at 0.05 with one lag (measured; 25 without).
 *
 * Source: Yue, S. & Wang, C.Y. (2004), Water Resources Management 18, 201-218.
 */
export function yueWangTrend(values: readonly number[], lags: number): SerialTrendOutcome {
  const n = values.length;
  if (n < 3) return tooFew(n, 3);
  if (!Number.isInteger(lags) || lags < 1 || lags > n - 1)
    throw new RangeError(`lags must be a whole number from 1 to ${n - 1}, got ${lags}`);
  const correlations = detrendedAutocorrelation(values, "values");
  if (correlations.kind !== "ok") return correlations;
  const sum = correlations.value.slice(0, lags).reduce((total, rho, index) => total + (1 - (index + 1) / n) * rho, 0);
  return serialTrend(values, 1 + 2 * sum);
}
