import { type CellSums, emptyCellSums } from "./cell-sums";
import { fillCellSums } from "./fill-cell-sums";
import type { LookData } from "./look-data";
import type { NuisanceCell } from "./nuisance-grid";
import { emptyShapeFactors, fillShapeFactors, type ShapeFactors } from "./shape-evidence";
import { oddRange, rampRange, stepRange } from "./shapes";
import { unitVariance } from "./unit-variance";

/** What one nuisance cell says of a look: marginal likelihoods of a flat level and of each family of shapes. */
export interface CellEvidence {
  readonly sums: CellSums;
  readonly step: ShapeFactors;
  /** The step that leaves the first group alone, and the one that leaves the last alone: never claimed. */
  readonly firstAlone: ShapeFactors;
  readonly lastAlone: ShapeFactors;
  readonly ramp: ShapeFactors;
  readonly odd: ShapeFactors;
  /** Prior variance of the size of a lasting change and of an odd group, in the unit squared. */
  changeVariance: number;
  oddVariance: number;
  /** Log likelihood of a flat level, cell weight left out. */
  logFlat: number;
  /** Log likelihood of a lasting change: half steps, half ramps. */
  logChange: number;
  /** Log likelihood of no lasting change: 0.7 flat, 0.3 one odd group. */
  logNoChange: number;
  /** Share of the change's likelihood that points up. */
  up: number;
}

/** Room for the evidence of cells over `count` used groups, filled cell by cell by `fillCellEvidence`. */
export function emptyCellEvidence(count: number): CellEvidence {
  return {
    sums: emptyCellSums(count),
    step: emptyShapeFactors(count),
    firstAlone: emptyShapeFactors(count),
    lastAlone: emptyShapeFactors(count),
    ramp: emptyShapeFactors(count),
    odd: emptyShapeFactors(count),
    changeVariance: 0,
    oddVariance: 0,
    logFlat: 0,
    logChange: 0,
    logNoChange: 0,
    up: 0.5,
  };
}

/** Fills `evidence` for one cell; at least four used groups. */
export function fillCellEvidence(look: LookData, cell: NuisanceCell, evidence: CellEvidence): void {
  const { count } = look;
  const { sums, step, ramp, odd } = evidence;
  fillCellSums(look, cell, sums);
  const unit = unitVariance(look, cell.daySd);
  const changeVariance = 4 * unit;
  const oddVariance = 16 * unit;
  evidence.changeVariance = changeVariance;
  evidence.oddVariance = oddVariance;
  const last = count - 1;
  fillShapeFactors(sums, sums.step, stepRange(count), changeVariance, step);
  fillShapeFactors(sums, sums.step, { first: 1, last: 1 }, changeVariance, evidence.firstAlone);
  fillShapeFactors(sums, sums.step, { first: last, last }, changeVariance, evidence.lastAlone);
  fillShapeFactors(sums, sums.ramp, rampRange(count), changeVariance, ramp);
  fillShapeFactors(sums, sums.odd, oddRange(count), oddVariance, odd);
  const residual = sums.yy - (sums.oneY * sums.oneY) / sums.oneOne;
  evidence.logFlat = -0.5 * (sums.logDeterminant + Math.log(sums.oneOne) + residual);
  const peak = Math.max(step.peak, ramp.peak);
  const stepScale = Math.exp(step.peak - peak) / (count - 3);
  const rampScale = Math.exp(ramp.peak - peak) / (count - 2);
  const change = step.sum * stepScale + ramp.sum * rampScale;
  evidence.logChange = evidence.logFlat + peak + Math.log(0.5 * change);
  evidence.up = (step.up * stepScale + ramp.up * rampScale) / change;
  evidence.logNoChange = evidence.logFlat + odd.peak + Math.log(0.7 * Math.exp(-odd.peak) + (0.3 * odd.sum) / count);
}
