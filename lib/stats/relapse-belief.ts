import { type CameAndWent, cameAndWent, hasRoom } from "./came-and-went";
import type { LookData } from "./look-data";
import { type NormalMixture, normalMixture } from "./normal-mixture";
import type { NuisanceCell } from "./nuisance-grid";
import type { PosteriorComponents } from "./posterior-components";
import { unitVariance } from "./unit-variance";

/**
 * Belief before the data that a change came and went, beside the 1 of all other shapes. At 0.1 levels after a lasting change
 * grew a tenth wider.
 */
const RELAPSED = 0.05;

/** What is believed of level and spread now when a change may have come and gone. */
export interface RelapseBelief {
  /** Level at the last group, less the look's origin, in the unit. */
  readonly level: NormalMixture;
  /** Weight of belief of each nuisance cell; they sum to 1. */
  readonly cells: readonly number[];
}

/**
 * Belief about level and day effects once a change that came and went is one more shape.
 *
 * A relapse within the look would else be explained by large day effects. Claims of a lasting change never rest on it.
 * `components`: those of `look`.
 */
export function relapseBelief(look: LookData, components: PosteriorComponents): RelapseBelief {
  const { stride, weights, levelMeans, levelVariances, logFlat } = components;
  const plain = look.cells.map((_, g) => {
    let sum = 0;
    for (let i = g * stride; i < (g + 1) * stride; i++) sum += weights[i] as number;
    return sum;
  });
  const relapsed = hasRoom(look.count) ? [...relapses(look, logFlat)] : [];
  const logs = relapsed.map(([g, each]) => (logFlat[g] as number) + each.logFactor + Math.log(RELAPSED));
  const peak = Math.max(0, ...logs);
  const added = logs.map((log) => Math.exp(log - peak));
  const scale = Math.exp(-peak);
  const cells = plain.map((weight) => weight * scale);
  relapsed.forEach(([g], i) => {
    cells[g] = (cells[g] as number) + (added[i] as number);
  });
  const total = cells.reduce((sum, weight) => sum + weight, 0);
  const joined = (own: ArrayLike<number>, more: readonly number[]): Float64Array =>
    Float64Array.from([...Array.from(own), ...more]);
  return {
    level: normalMixture(
      joined(
        weights.map((weight) => weight * scale),
        added,
      ),
      joined(
        levelMeans,
        relapsed.map(([, each]) => each.levelMean),
      ),
      joined(
        levelVariances,
        relapsed.map(([, each]) => each.levelVariance),
      ),
    ),
    cells: cells.map((weight) => weight / total),
  };
}

/** Below this part of the largest weight, as a natural log, a cell's relapses are left out. */
const NEGLIGIBLE = -7;

/**
 * A change that came and went, by cell; cells for which it can't matter are left out.
 *
 * The factor of the cell without correlation and persistence is the largest of its day sd, so that it tells at a sixth of
 * the cost or less which cells have to be worked out.
 */
function relapses(look: LookData, logFlat: Float64Array): ReadonlyMap<number, CameAndWent> {
  const answer = (cell: NuisanceCell): CameAndWent => cameAndWent(look, cell, sizeVariance(look, cell));
  const least = new Map<number, number>();
  const dependence = (cell: NuisanceCell): number => cell.correlation + cell.errorPersistence;
  look.cells.forEach((cell, g) => {
    const best = look.cells[least.get(cell.daySd) ?? -1];
    if (best === undefined || dependence(cell) < dependence(best)) least.set(cell.daySd, g);
  });
  const found = new Map<number, CameAndWent>();
  for (const g of least.values()) found.set(g, answer(look.cells[g] as NuisanceCell));
  const atMost = look.cells.map(
    ({ daySd }, g) => (logFlat[g] as number) + (found.get(least.get(daySd) as number) as CameAndWent).logFactor,
  );
  const needed = Math.max(0, ...atMost) + NEGLIGIBLE;
  look.cells.forEach((cell, g) => {
    if ((atMost[g] as number) < needed) found.delete(g);
    else if (!found.has(g)) found.set(g, answer(cell));
  });
  return found;
}

/** Prior variance of a change's size at a cell, as for lasting ones. */
function sizeVariance(look: LookData, cell: NuisanceCell): number {
  return 4 * unitVariance(look, cell.daySd);
}
