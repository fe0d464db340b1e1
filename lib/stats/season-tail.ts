/**
 * Anytime p-value of a season: chance that the largest evidence over its looks comes this high without a change.
 *
 * `maxLogBayesFactor`: largest log Bayes factor so far; above 1.457 the tail falls exponentially, below that
 * the answer is 1. Result in (0, 1]. Throws on NaN. The constants were fitted to the tail of simulated
 * unchanged seasons of twenty looks with neighbouring groups correlated at 0.3; other lengths differ.
 */
export function seasonTail(maxLogBayesFactor: number): number {
  if (Number.isNaN(maxLogBayesFactor)) throw new RangeError(`evidence must be a number: ${maxLogBayesFactor}`);
  if (!(maxLogBayesFactor > 1.457)) return 1;
  return 0.1 * Math.exp(-1.807 * (maxLogBayesFactor - 1.457));
}
