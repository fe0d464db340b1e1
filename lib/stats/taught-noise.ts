import { NOISE_GRID, priorCells } from "./noise-grid";
import type { NoiseModel } from "./noise-model";

/** Part of the vague belief that stays, so that no cell is held to be impossible. */
const KEPT = 0.1;

/**
 * What a pool taught of its noise, with little of the vague belief that a fitted model keeps beside it, one spread for
 * the whole series and shared errors that don't persist.
 *
 * For series that have shown their own noise already, where a false word costs little. The vague part is the largest
 * multiple of the grid's own split that every cell holds; a tenth of it is kept. Cells whose shared error persists are
 * left out, the others take their weight. A model that wasn't fitted on the grid in use keeps its weights.
 *
 * `noise`: day sds in the unit or in multiples, as they are. The result's weights sum to 1.
 *
 * Source: own simulation (an early alarm of three sds of a group value came within two groups in .57 instead of .53 at
 * equal false alarms).
 */
export function taughtNoise(noise: NoiseModel): NoiseModel {
  const { spread: _local, ...whole } = noise;
  const plan = priorCells(NOISE_GRID);
  const onGrid = noise.kind === "learned" && plan.length === noise.cells.length;
  const split = noise.cells.map((cell, g) => (onGrid ? (plan[g] as { weight: number }).weight : cell.weight));
  const apart = noise.cells.map((cell) => (cell.errorPersistence ?? 0) === 0 && cell.weight > 0);
  const used = noise.cells.flatMap((_, g) => (apart[g] ? [g] : []));
  // A model of nothing but persisting errors has nothing else to go by.
  if (used.length === 0) return whole;
  const vague = Math.min(...used.map((g) => (noise.cells[g] as { weight: number }).weight / (split[g] as number)));
  const cells = used.map((g) => {
    const cell = noise.cells[g] as NoiseModel["cells"][number];
    return { ...cell, weight: cell.weight - (1 - KEPT) * vague * (split[g] as number) };
  });
  const total = cells.reduce((sum, cell) => sum + cell.weight, 0);
  return { ...whole, cells: cells.map((cell) => ({ ...cell, weight: cell.weight / total })) };
}
