import { type CellEvidence, emptyCellEvidence, fillCellEvidence } from "./cell-evidence";
import { logSum } from "./log-sum";
import type { Evidence } from "./look";
import { type LookData, lookData } from "./look-data";
import type { NoiseModel } from "./noise-model";
import type { NuisanceCell } from "./nuisance-grid";
import { type Outcome, ok, tooFew } from "./outcome";
import type { Series } from "./series";

/** Fewest used groups of which a change can be claimed: two on either side. */
export const FIRST_LOOK = 4;

/**
 * Evidence of a lasting change in the level of a series: log Bayes factor against none.
 *
 * `series`: the groups up to the look, in date order. `noise`: what was believed of day sd and correlation
 * before the look. Change: a step (two groups at least on either side) or a ramp up to the last group, half
 * each, size ~ N(0, 4 U^2) with U the sd of one group value at the cell. No change: a flat level, or (0.3)
 * with one odd group, size ~ N(0, 16 U^2). Level: flat prior, or the starting belief. Cells are averaged by
 * their weights above and below the line. Too few: fewer than four used groups, counted in used groups.
 * Throws on bad input with the offending value.
 *
 * Assumes Gaussian group values with the known variances given; a change in spread can pass for a change
 * in level. Adding a constant, mirroring, and multiplying all inputs in the unit change nothing (mirroring
 * turns `directionUp` over). Source: Kass & Raftery (1995), Bayes factors, JASA 90; Barry & Hartigan (1993).
 */
export function evidence(series: Series, noise: NoiseModel): Outcome<Evidence> {
  const look = lookData(series, noise);
  if (look.count < FIRST_LOOK) return tooFew(look.count, FIRST_LOOK);
  const cell = emptyCellEvidence(look.count);
  const gathered: CellGathering = { change: [], noChange: [], up: [] };
  for (const nuisance of look.cells) {
    fillCellEvidence(look, nuisance, cell);
    gatherCell(gathered, nuisance, cell);
  }
  return ok(evidenceOf(look, gathered));
}

/** Weighted log likelihoods of the cells, one entry a cell, and the share of each change that points up. */
export interface CellGathering {
  readonly change: number[];
  readonly noChange: number[];
  readonly up: number[];
}

/** Adds one filled cell. */
export function gatherCell(gathered: CellGathering, nuisance: NuisanceCell, cell: CellEvidence): void {
  gathered.change.push(nuisance.logWeight + cell.logChange);
  gathered.noChange.push(nuisance.logWeight + cell.logNoChange);
  gathered.up.push(cell.up);
}

/** Averages gathered cells into the evidence of a look. */
export function evidenceOf(look: LookData, cells: CellGathering): Evidence {
  const change = logSum(cells.change);
  let up = 0;
  for (let g = 0; g < cells.up.length; g++)
    up += (cells.up[g] as number) * Math.exp((cells.change[g] as number) - change);
  return {
    groups: look.count,
    logBayesFactor: change - logSum(cells.noChange),
    directionUp: Math.min(1, Math.max(0, up)),
  };
}
