import type { CellEvidence } from "./cell-evidence";
import { emptyCellEvidence, fillCellEvidence } from "./cell-evidence";
import type { CellSums, ShapeSums } from "./cell-sums";
import { type CellGathering, emptyGathering } from "./evidence";
import type { LookData } from "./look-data";
import type { ShapeFactors } from "./shape-evidence";
import { rampRange } from "./shapes";

/**
 * Every (cell, shape) of a look with its weight of belief and its normal distributions.
 *
 * Components of cell g stand at g * stride: first `unchanged` of them (flat, then odd groups), then steps at
 * 1 to n-1, then ramps at 0 to n-3. Values are less the look's origin, in the unit.
 */
export interface PosteriorComponents {
  readonly stride: number;
  readonly unchanged: number;
  /** Relative weights; the largest is 1. */
  readonly weights: Float64Array;
  /** Level at the last group. */
  readonly levelMeans: Float64Array;
  readonly levelVariances: Float64Array;
  /** Level before the change, and its size; 0 for flat and odd. */
  readonly beforeMeans: Float64Array;
  readonly beforeVariances: Float64Array;
  readonly sizeMeans: Float64Array;
  readonly sizeVariances: Float64Array;
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
    gathered: emptyGathering(look),
  };
  const logFlat = Math.log(0.35);
  const logOdd = Math.log(0.15 / count);
  const logStep = Math.log(0.25 / (count - 1));
  const logRamp = Math.log(0.25 / (count - 2));
  const ramps = rampRange(count);
  const cell = emptyCellEvidence(count);
  cells.forEach((nuisance, g) => {
    fillCellEvidence(look, nuisance, cell);
    found.gathered.change[g] = nuisance.logWeight + cell.logChange;
    found.gathered.noChange[g] = nuisance.logWeight + cell.logNoChange;
    found.gathered.up[g] = cell.up;
    const base = nuisance.logWeight + cell.logFlat;
    let at = g * stride;
    found.weights[at] = base + logFlat;
    found.levelMeans[at] = cell.sums.oneY / cell.sums.oneOne;
    found.levelVariances[at] = 1 / cell.sums.oneOne;
    at += 1;
    const { sums, odd, step, ramp } = cell;
    fill(found, at, 0, count - 1, base + logOdd, sums, sums.odd, odd, cell.oddVariance, 0);
    at += count;
    fill(found, at, 1, count - 1, base + logStep, sums, sums.step, step, cell.changeVariance, 1);
    at += count - 1;
    fill(found, at, ramps.first, ramps.last, base + logRamp, sums, sums.ramp, ramp, cell.changeVariance, 1);
  });
  const { weights } = found;
  let peak = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < length; i++) peak = Math.max(peak, weights[i] as number);
  for (let i = 0; i < length; i++) {
    const log = (weights[i] as number) - peak;
    weights[i] = log < -40 ? 0 : Math.exp(log);
  }
  return found;
}

function fill(
  found: PosteriorComponents,
  at: number,
  first: number,
  last: number,
  base: number,
  sums: CellSums,
  shape: ShapeSums,
  factors: ShapeFactors,
  priorVariance: CellEvidence["changeVariance"],
  now: 0 | 1,
): void {
  const variance = 1 / sums.oneOne;
  const mean = sums.oneY * variance;
  const precision = 1 / priorVariance;
  for (let k = first, i = at; k <= last; k++, i++) {
    const sizeVariance = 1 / ((factors.information[k] as number) + precision);
    const size = (factors.score[k] as number) * sizeVariance;
    const lean = -(shape.x1[k] as number) * variance;
    const pull = now + lean;
    found.weights[i] = base + (factors.logFactor[k] as number);
    found.levelMeans[i] = mean + pull * size;
    found.levelVariances[i] = variance + pull * pull * sizeVariance;
    if (now === 0) continue;
    found.beforeMeans[i] = mean + lean * size;
    found.beforeVariances[i] = variance + lean * lean * sizeVariance;
    found.sizeMeans[i] = size;
    found.sizeVariances[i] = sizeVariance;
  }
}
