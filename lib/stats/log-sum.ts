/**
 * Natural log of a sum of numbers given by their logs, without overflow.
 *
 * `logs`: any length, any order; minus infinity stands for 0. Result: minus infinity for an empty list or one of zeros.
 * Bad input: NaN or plus infinity throws a RangeError.
 *
 * Source: the largest is taken out first; Higham, N.J. (2002), Accuracy and Stability of Numerical Algorithms, 27.8.
 */
export function logSum(logs: readonly number[]): number {
  let largest = Number.NEGATIVE_INFINITY;
  for (const log of logs) {
    if (Number.isNaN(log) || log === Number.POSITIVE_INFINITY)
      throw new RangeError(`a log must be below infinity, got ${log}`);
    if (log > largest) largest = log;
  }
  if (largest === Number.NEGATIVE_INFINITY) return largest;
  return largest + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - largest), 0));
}
