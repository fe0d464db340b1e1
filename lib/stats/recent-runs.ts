import { emptyCellSums } from "./cell-sums";
import { FIRST_LOOK } from "./evidence";
import { fillCellSums } from "./fill-cell-sums";
import { logSum } from "./log-sum";
import { lookData } from "./look-data";
import { mixtureEstimate } from "./mixture-quantile";
import type { NoiseModel } from "./noise-model";
import { normalCdf } from "./normal-distribution";
import { normalMixture } from "./normal-mixture";
import { type Outcome, ok, tooFew } from "./outcome";
import type { Estimate, Series } from "./series";
import { emptyShapeFactors, fillShapeFactors } from "./shape-evidence";
import { unitVariance } from "./unit-variance";

/** Belief about the size of a step, in sds of one group value: normal, of its positive part. */
export interface StepSize {
  readonly mean: number;
  readonly sd: number;
}

/** What the last groups, taken as one run on a level of their own, say against one level for all. */
export interface RecentRun {
  /** Groups of the run: 1 is the last alone. */
  readonly groups: number;
  /** Log Bayes factors of a step up, and of one down, at the run's first group against none. */
  readonly up: number;
  readonly down: number;
  /** Level of the run less that of the groups before it, whatever was believed of its size. */
  readonly size: Estimate;
}

/** Runs of several lengths, and how well one odd group fits. */
export interface RecentRuns {
  readonly runs: readonly RecentRun[];
  /** Log Bayes factor of "one level, or (0.3) one odd group" against one level. */
  readonly oddGroup: number;
}

/** Score and information of a step that begins with the run, at one nuisance cell. */
interface StepAt {
  readonly logWeight: number;
  readonly unitSd: number;
  readonly information: number;
  readonly score: number;
}

/**
 * Evidence that the last groups of a series lie on another level than those before, for runs of given lengths.
 *
 * `series`: the groups up to the look, in date order. `noise`: what was believed of day sd and correlation before it.
 * `lengths`: used groups of each run, from 1 to the used groups less one. `sizeOf`: what is believed of the step of a run
 * of so many groups, in U, the sd of one group value at the cell. Level before: flat prior, or the starting belief. Cells are averaged by their
 * weights above and below the line. One odd group is N(0, 16 U^2), any of them. Too few: fewer than four used groups.
 * Throws a RangeError on a length that leaves nothing on a side, and on bad input with the offending value.
 *
 * Assumes Gaussian group values with the known variances given. Adding a constant changes nothing, nor does multiplying
 * all inputs in the unit; mirroring exchanges up and down. Source: Kass & Raftery (1995), Bayes factors, JASA 90.
 */
export function recentRuns(
  series: Series,
  noise: NoiseModel,
  lengths: readonly number[],
  sizeOf: (groups: number) => StepSize,
): Outcome<RecentRuns> {
  const look = lookData(series, noise);
  const { count } = look;
  if (count < FIRST_LOOK) return tooFew(count, FIRST_LOOK);
  const wrong = lengths.find((length) => !(Number.isInteger(length) && length >= 1 && length < count));
  if (wrong !== undefined) throw new RangeError(`a run takes 1 to ${count - 1} groups: ${wrong}`);
  const sums = emptyCellSums(count);
  const odd = emptyShapeFactors(count);
  const flat: number[] = [];
  const orOdd: number[] = [];
  const steps: StepAt[][] = lengths.map(() => []);
  for (const cell of look.cells) {
    fillCellSums(look, cell, sums);
    const unit = unitVariance(look, cell.daySd);
    fillShapeFactors(sums, sums.odd, { first: 0, last: count - 1 }, 16 * unit, odd);
    const level = sums.oneY / sums.oneOne;
    const logFlat = -0.5 * (sums.logDeterminant + Math.log(sums.oneOne) + sums.yy - sums.oneY * level);
    const logWeight = cell.logWeight + logFlat;
    flat.push(logWeight);
    orOdd.push(logWeight + odd.peak + Math.log(0.7 * Math.exp(-odd.peak) + (0.3 * odd.sum) / count));
    lengths.forEach((length, at) => {
      const start = count - length;
      const x1 = sums.step.x1[start] as number;
      const information = Math.max(0, (sums.step.xx[start] as number) - (x1 * x1) / sums.oneOne);
      const score = (sums.step.xy[start] as number) - x1 * level;
      (steps[at] as StepAt[]).push({ logWeight, unitSd: Math.sqrt(unit), information, score });
    });
  }
  const still = logSum(flat);
  const against = (cells: readonly StepAt[], sign: 1 | -1, size: StepSize): number =>
    logSum(cells.map((cell) => cell.logWeight + logStepFactor(cell, sign, size))) - still;
  return ok({
    runs: lengths.map((groups, at) => {
      const cells = steps[at] as StepAt[];
      const size = sizeOf(groups);
      return { groups, up: against(cells, 1, size), down: against(cells, -1, size), size: stepSize(cells) };
    }),
    oddGroup: logSum(orOdd) - still,
  });
}

/** Log Bayes factor of a step one way, its size believed to be the positive part of N(m U, (s U)^2), against none. */
function logStepFactor(cell: StepAt, sign: 1 | -1, size: StepSize): number {
  const mean = size.mean * cell.unitSd;
  const precision = 1 / (size.sd * cell.unitSd) ** 2;
  const total = cell.information + precision;
  const found = (sign * cell.score + mean * precision) / total;
  const exponent = 0.5 * (found * found * total - mean * mean * precision);
  const part = logNormalCdf(found * Math.sqrt(total)) - logNormalCdf(size.mean / size.sd);
  return 0.5 * Math.log(precision / total) + exponent + part;
}

/** Beyond so many sds below 0 the distribution function loses its digits; the tail is as good as its first term. */
const FAR = -25;

function logNormalCdf(z: number): number {
  return z < FAR ? -0.5 * z * z - Math.log(-z * Math.sqrt(2 * Math.PI)) : Math.log(normalCdf(z));
}

/** The step's size under a flat belief about it, cells weighed by how well they then fit. */
function stepSize(cells: readonly StepAt[]): Estimate {
  const least = 1e-9 / Math.max(...cells.map((cell) => cell.unitSd)) ** 2;
  const precisions = cells.map((cell) => Math.max(cell.information, least));
  const logs = cells.map(
    (cell, g) =>
      cell.logWeight + (0.5 * cell.score ** 2) / (precisions[g] as number) - 0.5 * Math.log(precisions[g] as number),
  );
  const total = logSum(logs);
  return mixtureEstimate(
    normalMixture(
      Float64Array.from(logs, (log) => Math.exp(log - total)),
      Float64Array.from(cells, (cell, g) => cell.score / (precisions[g] as number)),
      Float64Array.from(precisions, (precision) => 1 / precision),
    ),
  );
}
