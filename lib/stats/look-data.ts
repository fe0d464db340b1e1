import { huberCentre } from "./huber-centre";
import { localSpread } from "./local-spread";
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
  /** Known variance of each value: shared error squared plus local replicate variance over m. */
  readonly variances: Float64Array;
  /** Mean of `variances`. */
  readonly meanVariance: number;
  /** Local sd over the series' own, of days and replicates alike (see `localSpread`). */
  readonly spread: Float64Array;
  /** Mean of `spread` squared. */
  readonly meanSpread: number;
  /** Days from each group to the next, at least 1, in units of ten days; the last entry is 0. */
  readonly tensOfDays: Float64Array;
  /** Shared error sd of groups that name no label, else 0: the error that may persist from group to group. */
  readonly unlabelled: Float64Array;
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
  const count = groups.length;
  const replicates = groups.map((group) => group.values);
  const spread = replicateSd(replicates, series.readingErrorSd, noise.replicateSd);
  const centres = groups.map((group) => huberCentre(group.values, 1.5 * spread.sd));
  const origin = centres[0] ?? 0;
  const values = Float64Array.from(centres, (centre) => centre - origin);
  const local = noise.spread === "local" ? localSpread(replicates, spread.sd) : new Float64Array(count).fill(1);
  const variances = Float64Array.from(
    groups,
    (group, i) => group.sharedErrorSd ** 2 + ((local[i] as number) * spread.sd ** 2) / group.values.length,
  );
  const unlabelled = Float64Array.from(groups, (group) => (group.sharedErrorLabel === null ? group.sharedErrorSd : 0));
  const mean = (of: Float64Array): number => (count === 0 ? 0 : of.reduce((sum, each) => sum + each, 0) / count);
  return {
    count,
    positions,
    groups,
    values,
    origin,
    variances,
    meanVariance: mean(variances),
    spread: local.map(Math.sqrt),
    meanSpread: count === 0 ? 1 : mean(local),
    tensOfDays: Float64Array.from(groups, (group, i) => {
      const next = groups[i + 1];
      return next === undefined ? 0 : Math.max(1, next.day - group.day) / 10;
    }),
    unlabelled,
    replicateSd: spread.sd,
    degreesOfFreedom: spread.degreesOfFreedom,
    ties: tieCovariance(groups, series.offsetSd),
    start:
      series.start === null ? null : { mean: series.start.mean - origin, variance: series.start.sd * series.start.sd },
    cells: count < 2 ? [] : distinctCells(nuisanceGrid(noise, centres, spread.sd, series.readingErrorSd), unlabelled),
  };
}

/** Without an error that could persist, cells that differ in persistence alone are one. */
function distinctCells(cells: readonly NuisanceCell[], unlabelled: Float64Array): readonly NuisanceCell[] {
  if (unlabelled.some((sd) => sd > 0) || cells.every((cell) => cell.errorPersistence === 0)) return cells;
  const merged = new Map<string, NuisanceCell>();
  for (const cell of cells) {
    const key = `${cell.daySd} ${cell.correlation} ${cell.fadesBy}`;
    const weight = cell.weight + (merged.get(key)?.weight ?? 0);
    merged.set(key, { ...cell, errorPersistence: 0, weight, logWeight: Math.log(weight) });
  }
  return [...merged.values()];
}
