import { emptyCellEvidence, fillCellEvidence } from "./cell-evidence";
import type { CellSums, ShapeSums } from "./cell-sums";
import { type CellGathering, gatherCell } from "./evidence";
import type { LookData } from "./look-data";
import type { ShapeFactors } from "./shape-evidence";
import { rampRange, type ShapeRange, stepRange } from "./shapes";

/**
 * Every (cell, shape) of a look with its weight of belief and its normal distributions.
 *
 * Components of cell g stand at g * stride: first `unchanged` of them (flat, then odd groups), then steps at
 * 1 to n-1, then ramps at 0 to n-3. Values are less the look's origin, in the unit.
 */
export interface PosteriorComponents {
  readonly stride: number;
  readonly unchanged: number;
  /** Relative weights, 0 or more. */
  readonly weights: Float64Array;
  /** Level at the last group. */
  readonly levelMeans: Float64Array;
  readonly levelVariances: Float64Array;
  /** Level before the change, and its size; 0 for flat and odd. */
  readonly beforeMeans: Float64Array;
  readonly beforeVariances: Float64Array;
  readonly sizeMeans: Float64Array;
  readonly sizeVariances: Float64Array;
  /** Log likelihood of a flat level with the cell's weight, one entry a cell; `weights` are relative to exp of the same. */
  readonly logFlat: Float64Array;
  readonly gathered: CellGathering;
}

/**
 * Collects the components of a look of at least four used groups.
 *
 * Belief before the data: flat 0.35, one odd group 0.15, a step 0.25, a ramp 0.25, each spread evenly over
 * its starts. Steps that leave a single group on one side are among them: they are never claimed, but
 * without them a lone first group would be believed too much.
 */
export function posteriorComponents(look: LookData): PosteriorComponents {
  const { count, cells } = look;
  const unchanged = 1 + count;
  const stride = unchanged + (count - 1) + (count - 2);
  const length = cells.length * stride;
  const room = (): Float64Array => new Float64Array(length);
  const found: PosteriorComponents = {
    stride,
    unchanged,
    weights: room(),
    levelMeans: room(),
    levelVariances: room(),
    beforeMeans: room(),
    beforeVariances: room(),
    sizeMeans: room(),
    sizeVariances: room(),
    logFlat: new Float64Array(cells.length),
    gathered: { change: [], noChange: [], up: [] },
  };
  const ramps = rampRange(count);
  const cell = emptyCellEvidence(count);
  const logs: number[] = [];
  cells.forEach((nuisance, g) => {
    fillCellEvidence(look, nuisance, cell);
    gatherCell(found.gathered, nuisance, cell);
    const { sums, step, ramp, odd, firstAlone, lastAlone } = cell;
    const peak = Math.max(step.peak, ramp.peak, odd.peak, firstAlone.peak, lastAlone.peak);
    found.logFlat[g] = nuisance.logWeight + cell.logFlat;
    logs.push(nuisance.logWeight + cell.logFlat + peak);
    const prior = {
      odd: (0.15 / count) * held(odd.peak - peak),
      step: 0.25 / (count - 1),
      ramp: (0.25 / (count - 2)) * held(ramp.peak - peak),
    };
    let at = g * stride;
    found.weights[at] = 0.35 * Math.exp(-peak);
    found.levelMeans[at] = sums.oneY / sums.oneOne;
    found.levelVariances[at] = 1 / sums.oneOne;
    at += 1;
    fill(found, at, { first: 0, last: count - 1 }, prior.odd, sums, sums.odd, odd, cell.oddVariance, 0);
    at += count;
    for (const [range, factors] of [
      [{ first: 1, last: 1 }, firstAlone],
      [stepRange(count), step],
      [{ first: count - 1, last: count - 1 }, lastAlone],
    ] as const) {
      const weight = prior.step * held(factors.peak - peak);
      fill(found, at, range, weight, sums, sums.step, factors, cell.changeVariance, 1);
      at += range.last - range.first + 1;
    }
    fill(found, at, ramps, prior.ramp, sums, sums.ramp, ramp, cell.changeVariance, 1);
  });
  const peak = Math.max(...logs);
  logs.forEach((log, g) => {
    const scale = Math.exp(log - peak);
    found.logFlat[g] = (found.logFlat[g] as number) - peak;
    for (let i = g * stride; i < (g + 1) * stride; i++) found.weights[i] = (found.weights[i] as number) * scale;
  });
  return found;
}

/** Farthest that a family falls behind the best one, as a natural log: what is left of it can still be told apart. */
const FARTHEST = 600;

/** A relative weight that never underflows: one odd group far enough away would leave the changes none at all. */
function held(log: number): number {
  return Math.exp(Math.max(log, -FARTHEST));
}

/** Components of one family at one cell, from entry `at` on; `now` is the shape's value at the last group. */
function fill(
  found: PosteriorComponents,
  at: number,
  range: ShapeRange,
  weight: number,
  sums: CellSums,
  shape: ShapeSums,
  factors: ShapeFactors,
  priorVariance: number,
  now: 0 | 1,
): void {
  const variance = 1 / sums.oneOne;
  const mean = sums.oneY * variance;
  const precision = 1 / priorVariance;
  for (let k = range.first, i = at; k <= range.last; k++, i++) {
    const sizeVariance = 1 / ((factors.information[k] as number) + precision);
    const size = (factors.score[k] as number) * sizeVariance;
    const lean = -(shape.x1[k] as number) * variance;
    const pull = now + lean;
    found.weights[i] = weight * (factors.factor[k] as number);
    found.levelMeans[i] = mean + pull * size;
    found.levelVariances[i] = variance + pull * pull * sizeVariance;
    if (now === 0) continue;
    found.beforeMeans[i] = mean + lean * size;
    found.beforeVariances[i] = variance + lean * lean * sizeVariance;
    found.sizeMeans[i] = size;
    found.sizeVariances[i] = sizeVariance;
  }
}
