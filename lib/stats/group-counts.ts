/** Successes among the trials of one group (all trials of one occasion). */
export interface GroupCounts {
  readonly successes: number;
  /** 1 or more. */
  readonly trials: number;
}

/** What is believed of how alike the trials of one group are, before the groups are looked at. */
export interface CorrelationBelief {
  /** Correlation between two trials of one group, each 0 to below 1. */
  readonly correlations: readonly number[];
  /** Share of belief, one a correlation, 0 or more; they sum to 1. */
  readonly weights: readonly number[];
}

/**
 * A weak belief: Beta(1, 4), mean 0.2, half of it below 0.16, as the middles of twelve stretches of equal chance; no
 * published source, common practice for counts by occasion.
 */
export const WEAK_CORRELATION: CorrelationBelief = {
  correlations: Array.from({ length: 12 }, (_, i) => 1 - (1 - (i + 0.5) / 12) ** 0.25),
  weights: new Array<number>(12).fill(1 / 12),
};
