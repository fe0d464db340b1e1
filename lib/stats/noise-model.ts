/** One point of the nuisance grid: how much the level wavers by the day, and how long a waver lasts. */
export interface NoiseCell {
  /** Sd of the day-to-day effect, in the unit of the series (`learned`) or in units of S0 (`start`). */
  readonly daySd: number;
  /** Correlation of the effect between neighbouring groups, 0 to below 1; by days: between groups ten days apart. */
  readonly correlation: number;
  /** By what the correlation fades: from group to group (absent), or with the days between them. */
  readonly fadesBy?: "days";
  /** Correlation of the shared error between neighbouring groups that name no label, 0 (absent) to below 1. */
  readonly errorPersistence?: number;
  /** Share of belief; over all cells the weights sum to 1. */
  readonly weight: number;
}

/**
 * What is believed of the noise of one pool of series before one of them is looked at.
 *
 * `learned`: fitted on the pool, day sds in the unit. `start`: fewer than ten series to learn from; day
 * sds are multiples of the series' own S0, so that no absolute number enters.
 */
export interface NoiseModel {
  readonly id: string;
  readonly kind: "learned" | "start";
  readonly cells: readonly NoiseCell[];
  /** Median replicate-to-replicate sd of the pool, in the unit; null: unknown. */
  readonly replicateSd: number | null;
  /** `local`: spread may change within a series (see `localSpread`); absent: one spread for all of it. */
  readonly spread?: "local";
  /** Share of series that hold a lasting change, 0.05 to 0.5. */
  readonly priorChange: number;
  /** How many series it was learned from. */
  readonly learnedFrom: number;
}
