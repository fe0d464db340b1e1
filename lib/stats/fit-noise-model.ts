import { median } from "simple-statistics";
import { emptyCellEvidence, fillCellEvidence } from "./cell-evidence";
import { huberCentre } from "./huber-centre";
import { lookData } from "./look-data";
import { NOISE_GRID, type NoiseGrid, priorCells } from "./noise-grid";
import type { NoiseCell, NoiseModel } from "./noise-model";
import type { NuisanceCell } from "./nuisance-grid";
import { replicateSd } from "./replicate-sd";
import { requireSeries } from "./require-series";
import type { Series } from "./series";
import { startNoiseModel } from "./start-noise-model";
import { startScale } from "./start-scale";

const FEWEST_SERIES = 10;
const FEWEST_GROUPS = 5;
const ROUNDS = 60;
const PSEUDO_COUNTS = 7.5;
const VAGUE_SHARE = 0.5;

/**
 * Learns from a pool of series how noisy its kind is: day sd, correlation, replicate sd, share that change.
 *
 * `pool`: series in one unit, in any order; those with fewer than five used groups are left out, and with
 * fewer than ten left the answer is the start model. `id`: the name under which the model is kept.
 *
 * Replicate sd: median own sd of series with ten degrees of freedom, where there are three such, else null.
 * Day sds: fixed multiples of a third of it (of the median start scale where it is null) by the correlations, fades
 * and persistences of the grid. Weights by expectation-maximisation, each series being half changed and half not,
 * from the grid's own split with 7.5 pseudo-counts, 60 rounds; then half is put back to that split, so that a series
 * unlike its pool is still judged, and belief in a shared error that persists is held at the grid's share or above it:
 * a pool whose errors don't persist says little of the series whose do. Share that change: the same way given these
 * weights, from 0.2, held between 0.05 and 0.5. Throws on bad input with the offending value.
 *
 * Source: Laird (1978), Nonparametric maximum likelihood estimation of a mixing distribution, JASA 73.
 */
export function fitNoiseModel(pool: readonly Series[], id: string, plan: NoiseGrid = NOISE_GRID): NoiseModel {
  for (const series of pool) requireSeries(series);
  const usable = pool.filter((series) => usedGroups(series).length >= FEWEST_GROUPS);
  if (usable.length < FEWEST_SERIES) return startNoiseModel(id);
  const poolSd = poolReplicateSd(usable);
  const scale = poolSd === null ? medianStartScale(usable) : poolSd / 3;
  const prior = priorCells(plan).map((cell) => ({ ...cell, daySd: cell.daySd * scale }));
  const priorModel: NoiseModel = {
    id,
    kind: "learned",
    cells: prior,
    replicateSd: poolSd,
    ...(plan.spread === "local" ? { spread: plan.spread } : {}),
    priorChange: 0.2,
    learnedFrom: usable.length,
  };
  const likelihoods = usable.map((series) => cellLikelihoods(series, priorModel));
  const split = prior.map((cell) => cell.weight);
  const learned = emWeights(likelihoods, split);
  const mixed = learned.map((weight, g) => (1 - VAGUE_SHARE) * weight + VAGUE_SHARE * (split[g] as number));
  const weights = withPersistence(mixed, prior);
  return {
    ...priorModel,
    cells: prior.map((cell, g) => ({ ...cell, weight: weights[g] as number })),
    priorChange: shareChanging(likelihoods, weights),
  };
}

function usedGroups(series: Series): (readonly number[])[] {
  return series.groups.filter((group) => group.used).map((group) => group.values);
}

function poolReplicateSd(pool: readonly Series[]): number | null {
  const own: number[] = [];
  for (const series of pool) {
    const spread = replicateSd(usedGroups(series), series.readingErrorSd, null);
    if (spread.own !== null && spread.degreesOfFreedom >= 10) own.push(spread.own);
  }
  if (own.length < 3) return null;
  const middle = median(own);
  return middle > 0 ? middle : null;
}

function medianStartScale(pool: readonly Series[]): number {
  return median(
    pool.map((series) => {
      const groups = usedGroups(series);
      const { sd } = replicateSd(groups, series.readingErrorSd, null);
      const centres = groups.map((values) => huberCentre(values, 1.5 * sd));
      return startScale(centres, sd, series.readingErrorSd);
    }),
  );
}

/** Weights that give cells whose error persists the grid's share of belief together, where they had less. */
function withPersistence(weights: readonly number[], prior: readonly NoiseCell[]): readonly number[] {
  const persists = prior.map((cell) => (cell.errorPersistence ?? 0) > 0);
  const sum = (of: readonly number[]): number => of.reduce((total, each, g) => total + (persists[g] ? each : 0), 0);
  const least = sum(prior.map((cell) => cell.weight));
  const share = sum(weights);
  if (share >= least) return weights;
  return weights.map((weight, g) => weight * (persists[g] ? least / share : (1 - least) / (1 - share)));
}

/** Likelihoods of one series by cell of the model, relative to its largest: with and without a lasting change. */
interface CellLikelihoods {
  readonly change: number[];
  readonly noChange: number[];
}

function cellKey(cell: NoiseCell | NuisanceCell, errorPersistence: number): string {
  return `${cell.daySd} ${cell.correlation} ${cell.fadesBy ?? "groups"} ${errorPersistence}`;
}

function cellLikelihoods(series: Series, noise: NoiseModel): CellLikelihoods {
  const look = lookData(series, noise);
  const cell = emptyCellEvidence(look.count);
  const found = new Map<string, { readonly change: number; readonly noChange: number }>();
  for (const nuisance of look.cells) {
    fillCellEvidence(look, nuisance, cell);
    found.set(cellKey(nuisance, nuisance.errorPersistence), { change: cell.logChange, noChange: cell.logNoChange });
  }
  // A series without an error that could persist says the same of a cell whatever its persistence.
  const logs = noise.cells.map((each) => {
    const own = found.get(cellKey(each, each.errorPersistence ?? 0)) ?? found.get(cellKey(each, 0));
    if (own === undefined) throw new RangeError(`a cell without a likelihood: ${cellKey(each, 0)}`);
    return own;
  });
  const peak = Math.max(...logs.flatMap((each) => [each.change, each.noChange]));
  return {
    change: logs.map((each) => Math.exp(each.change - peak)),
    noChange: logs.map((each) => Math.exp(each.noChange - peak)),
  };
}

function emWeights(pool: readonly CellLikelihoods[], split: readonly number[]): number[] {
  const total = pool.length + PSEUDO_COUNTS;
  let weights = [...split];
  for (let round = 0; round < ROUNDS; round++) {
    const counts = split.map((share) => PSEUDO_COUNTS * share);
    for (const { change, noChange } of pool) {
      const joint = weights.map((w, g) => w * 0.5 * ((change[g] as number) + (noChange[g] as number)));
      const sum = joint.reduce((a, b) => a + b, 0);
      joint.forEach((part, g) => {
        counts[g] = (counts[g] as number) + part / sum;
      });
    }
    weights = counts.map((count) => count / total);
  }
  return weights;
}

function shareChanging(pool: readonly CellLikelihoods[], weights: readonly number[]): number {
  const pairs = pool.map(({ change, noChange }) => ({
    change: weights.reduce((sum, w, g) => sum + w * (change[g] as number), 0),
    noChange: weights.reduce((sum, w, g) => sum + w * (noChange[g] as number), 0),
  }));
  let share = 0.2;
  for (let round = 0; round < ROUNDS; round++) {
    let changing = 0;
    for (const pair of pairs) changing += (share * pair.change) / (share * pair.change + (1 - share) * pair.noChange);
    share = changing / pairs.length;
  }
  return Math.min(0.5, Math.max(0.05, share));
}
