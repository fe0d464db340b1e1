/**
 * One occasion on which several replicates were taken.
 *
 * All replicates of a group share whatever was wrong on that occasion: the state of the day, and one
 * shared measuring error of known sd.
 */
export interface ReplicateGroup {
  /** Day number, whole; differences are days. */
  readonly day: number;
  /** The replicates in the order taken, in the unit of the series; at least one where `used`. */
  readonly values: readonly number[];
  /** Known sd of the error that all replicates of this group share, in the unit; 0 or more. */
  readonly sharedErrorSd: number;
  /** Groups with equal labels share one draw of that error; null: a draw of its own. */
  readonly sharedErrorLabel: string | null;
  /** Groups with equal labels share one draw of the offset of sd `offsetSd`; null is a label like any other. */
  readonly offsetLabel: string | null;
  /** False: set aside before judging; the group keeps its index, the engine doesn't see it. */
  readonly used: boolean;
}

/**
 * Everything that is known of one measured quantity over time.
 *
 * Groups stand in date order; indices in results are positions in `groups`.
 */
export interface Series {
  readonly groups: readonly ReplicateGroup[];
  /** Known sd of the error of one replicate's reading, in the unit; more than 0. */
  readonly readingErrorSd: number;
  /** Known sd of the offset between offset labels, in the unit; matters only where labels differ. */
  readonly offsetSd: number;
  /** Belief about the level before the first group; null: nothing is known of it. */
  readonly start: { readonly mean: number; readonly sd: number } | null;
}

/** An estimate with its 80 and 95 of 100 intervals, all in one unit. */
export interface Estimate {
  readonly estimate: number;
  readonly low80: number;
  readonly high80: number;
  readonly low95: number;
  readonly high95: number;
}

/** A stretch on the line; null is no edge on that side. */
export interface Band {
  readonly low: number | null;
  readonly high: number | null;
}
