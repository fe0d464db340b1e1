/**
 * Sum of a list, with the rounding error of every addition carried along and added at the end.
 *
 * `values`: any length, any order, any one unit. The result, in the same unit, is as good as if it had been
 * summed in twice the working digits and then rounded; 0 for an empty list. Bad input: NaN and infinity
 * come out as they would from a plain sum; callers refuse them first. Assumes no overflow.
 *
 * Source: Neumaier, A. (1974). Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen.
 * Zeitschrift für Angewandte Mathematik und Mechanik 54, 39-51.
 */
export function compensatedSum(values: readonly number[]): number {
  let sum = 0;
  let lost = 0;
  for (const value of values) {
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}
