import { huberCentre } from "./huber-centre";
import type { NoiseModel } from "./noise-model";
import { type NuisanceCell, nuisanceGrid } from "./nuisance-grid";
import { replicateSd } from "./replicate-sd";
import { requireNoiseModel, requireSeries } from "./require-series";
import type { ReplicateGroup, Series } from "./series";
import { tieCovariance } from "./tie-covariance";

/** The used groups of a series as one look sees them; every array has one entry a used group, in date order. */
export interface LookData {
  readonly count: number;
  /** Positions in `Series.groups`. */
  readonly positions: readonly number[];
  readonly groups: readonly ReplicateGroup[];
  /** Huber centre of each group less `origin`, in the unit. */
  readonly values: Float64Array;
  /** Value of the first used group, in the unit. */
  readonly origin: number;
  /** Known variance of each value: shared error squared plus replicate variance over m. */
  readonly variances: Float64Array;
  /** Mean of `variances`. */
  readonly meanVariance: number;
  readonly replicateSd: number;
  readonly degreesOfFreedom: number;
  /** Covariance that ties add to the values, n x n, row by row (see `tieCovariance`); null where errors are independent. */
  readonly ties: Float64Array | null;
  /** Starting belief about the old level, less `origin`; null: none. */
  readonly start: { readonly mean: number; readonly variance: number } | null;
  readonly cells: readonly NuisanceCell[];
}

/**
 * Reduces a series to what a look needs: one robust value and one known variance a used group.
 *
 * With no used group the arrays are empty and there are no cells. Throws on bad input with the offending
 * value (see `requireSeries`). It sees nothing but the series given: no later group, no other series.
 */
export function lookData(series: Series, noise: NoiseModel): LookData {
  requireSeries(series);
  requireNoiseModel(noise);
  const positions: number[] = [];
  const groups: ReplicateGroup[] = [];
  series.groups.forEach((group, index) => {
    if (!group.used) return;
    positions.push(index);
    groups.push(group);
  });
  const spread = replicateSd(
    groups.map((group) => group.values),
    series.readingErrorSd,
    noise.replicateSd,
  );
  const count = groups.length;
  const centres = groups.map((group) => huberCentre(group.values, 1.5 * spread.sd));
  const origin = centres[0] ?? 0;
  const values = Float64Array.from(centres, (centre) => centre - origin);
  const variances = Float64Array.from(
    groups,
    (group) => group.sharedErrorSd ** 2 + spread.sd ** 2 / group.values.length,
  );
  let sum = 0;
  for (const variance of variances) sum += variance;
  return {
    count,
    positions,
    groups,
    values,
    origin,
    variances,
    meanVariance: count === 0 ? 0 : sum / count,
    replicateSd: spread.sd,
    degreesOfFreedom: spread.degreesOfFreedom,
    ties: tieCovariance(groups, series.offsetSd),
    start:
      series.start === null ? null : { mean: series.start.mean - origin, variance: series.start.sd * series.start.sd },
    cells: count < 2 ? [] : nuisanceGrid(noise, centres, spread.sd, series.readingErrorSd),
  };
}
