import { detrendedAutocorrelation } from "./detrended-autocorrelation";
import { normalQuantile } from "./normal-distribution";
import { tooFew } from "./outcome";
import { requireProbability } from "./require-probability";
import { type SerialTrendOutcome, serialTrend } from "./serial-trend";

/**
 * Mann-Kendall test with the variance that Hamed and Rao correct for serial correlation of the ranks.
 *
 * `values`: in the order taken, evenly spaced, one unit; `lags`: how many lags to look at, whole, 1 to n - 1; `level`: chance at
 * which a correlation counts, 0.05 as published: weaker ones are taken as 0. Fewer than three values: too-few, counting values. A
 * straight line: too-few, counting different residuals (1 of 2). A corrected variance of 0 or less: no-variance. Bad
 * input: NaN, infinity, a level outside 0 to 1 or lags that can't be throws a RangeError. Assumes a stationary series
 * about a line; the correction is for long series: of 60 values with 0.5 from one to the next and no trend, about 15 of 100 were
 * called a trend at 0.05 with one lag (measured; 25 without the correction).
 *
 * Source: Hamed, K.H. & Rao, A.R. (1998), Journal of Hydrology 204, 182-196.
 */
export function hamedRaoTrend(values: readonly number[], lags: number, level: number): SerialTrendOutcome {
  requireProbability(level, "level");
  const n = values.length;
  if (n < 3) return tooFew(n, 3);
  if (!Number.isInteger(lags) || lags < 1 || lags > n - 1)
    throw new RangeError(`lags must be a whole number from 1 to ${n - 1}, got ${lags}`);
  const correlations = detrendedAutocorrelation(values, "ranks");
  if (correlations.kind !== "ok") return correlations;
  const limit = -normalQuantile(level / 2) / Math.sqrt(n);
  const sum = correlations.value.slice(0, lags).reduce((total, rho, index) => {
    const k = index + 1;
    return Math.abs(rho) > limit ? total + (n - k) * (n - k - 1) * (n - k - 2) * rho : total;
  }, 0);
  return serialTrend(values, 1 + (2 * sum) / (n * (n - 1) * (n - 2)));
}
