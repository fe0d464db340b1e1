/** Measured tails of what a season bears out: by looks, where a tenth lies above, and how fast it falls beyond. */
const TAILS = [
  { looks: 6, tenth: -1.69, slope: 2.3 },
  { looks: 12, tenth: 0.36, slope: 1.85 },
  { looks: 20, tenth: 0.81, slope: 1.6 },
  { looks: 40, tenth: 0.97, slope: 1.5 },
] as const;

/**
 * Anytime p-value of a season: chance that what two looks in a row bear out comes this high without a change.
 *
 * `maxLogBayesFactor`: the largest so far of the smaller of two successive looks' log Bayes factors, each less what its
 * look asks beyond the limit. `looks`: looks
 * that the season may have, 1 or more; between 6, 12, 20 and 40 the constants are interpolated, outside the nearest
 * hold. The tail falls exponentially from where a tenth of unchanged seasons lies; the answer is at most 1. Throws on
 * NaN, and on fewer looks than one.
 *
 * The constants were fitted to this engine's own unchanged seasons of varied series (correlations 0 to 0.3, heavy
 * tails, rounding, misreadings, single replicates); other noise differs.
 */
export function seasonTail(maxLogBayesFactor: number, looks: number): number {
  if (Number.isNaN(maxLogBayesFactor)) throw new RangeError(`evidence must be a number: ${maxLogBayesFactor}`);
  if (!(looks >= 1)) throw new RangeError(`a season has at least one look: ${looks}`);
  const next = TAILS.findIndex((tail) => looks <= tail.looks);
  const upper = TAILS[next] ?? TAILS[TAILS.length - 1];
  const lower = next > 0 ? TAILS[next - 1] : upper;
  if (upper === undefined || lower === undefined) throw new RangeError("no measured tail");
  const share = upper === lower ? 0 : (looks - lower.looks) / (upper.looks - lower.looks);
  const tenth = lower.tenth + share * (upper.tenth - lower.tenth);
  const slope = lower.slope + share * (upper.slope - lower.slope);
  return Math.min(1, 0.1 * Math.exp(-slope * (maxLogBayesFactor - tenth)));
}
