/** What is known of the spread of replicates about their group's state. */
export interface MeasuredSpread {
  /** Sd of a replicate, reading error included, in the unit. */
  readonly replicateSd: number;
  /** Known sd of one reading, in the unit. */
  readonly readingErrorSd: number;
  /** Step to which readings were rounded, in the unit; 0: not rounded (see `readingStep`). */
  readonly step: number;
}

/**
 * Variance of replicates with reading error and rounding taken out, in the unit squared.
 *
 * `factor` scales the measured variance (1 for its estimate; nu / chi-squared for a draw of its uncertainty).
 * Rounding to a step r adds r^2 / 12. At least a twentieth of the measured variance stays.
 * Source for r^2 / 12: Sheppard (1898), Proc. London Math. Soc. 29.
 */
export function trueReplicateVariance(spread: MeasuredSpread, factor: number): number {
  const measured = spread.replicateSd ** 2;
  return Math.max(measured * factor - spread.readingErrorSd ** 2 - spread.step ** 2 / 12, 0.05 * measured);
}
