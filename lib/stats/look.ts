import type { Band, Estimate } from "./series";

/** Evidence at one look: log Bayes factor of a lasting change against none, and which way it went. */
export interface Evidence {
  /** Used groups that it rests on. */
  readonly groups: number;
  /** Natural log of the Bayes factor; positive speaks for a lasting change. */
  readonly logBayesFactor: number;
  /** Share of the step and ramp weight that points up, 0 to 1. */
  readonly directionUp: number;
}

/** What one look says beside its evidence: where, how big, how sure. Indices are positions in `Series.groups`. */
export interface Posterior extends Evidence {
  /** Sd of one group mean: day, shared error, replicate and reading together (U), in the unit. */
  readonly unitSd: number;
  /** Day-to-day sd, posterior mean over the grid, in the unit. */
  readonly daySd: number;
  /** Replicate sd, its reading error included, in the unit. */
  readonly replicateSd: number;
  /** Level at the last used group. */
  readonly level: Estimate;
  /** Level before the change, given that there was one. */
  readonly levelBefore: Estimate;
  /** Size of the change (new minus old), given that there was one. */
  readonly size: Estimate;
  /** First group of the new level: smallest sets of indices holding 80 and 95 of 100 of the step weight, ascending. */
  readonly set80: readonly number[];
  readonly set95: readonly number[];
  /** Share of the change's weight held by ramps, 0 to 1. */
  readonly rampShare: number;
  /** Group index at the 10 % quantile of the ramp's start. */
  readonly rampStart10: number;
  /** Probability that |change now| is below `limit`, half of the belief being on no change. */
  probabilityWithin(limit: number): number;
  /** Share of replicates inside the band at today's level, measuring error taken out. */
  share(band: Band): Estimate;
  /** Expected distance of a replicate from the band at a level: day and replicate spread included, measuring error taken out. */
  expectedDistance(level: number, band: Band): number;
}

/** Slope over days, in the unit per day, with its 95 of 100 interval. */
export interface Trend {
  readonly perDay: number;
  readonly low95: number;
  readonly high95: number;
}
