import type { LookData } from "./look-data";
import type { PosteriorComponents } from "./posterior-components";
import { stepRange } from "./shapes";

/** Weight of belief of a look, sorted by what is asked of it. */
export interface PosteriorWeights {
  /** Share of all weight on no lasting change, 0 to 1. */
  readonly noChange: number;
  /** One entry a nuisance cell; they sum to 1. */
  readonly cells: readonly number[];
  /** One entry a component: weights of lasting changes alone. */
  readonly changed: Float64Array;
  /** One entry a component: weights of claimable changes alone; steps take the belief of all steps among themselves. */
  readonly claimed: Float64Array;
  /** Claimable steps by first group of the new level, and ramps by last group of the old: one entry a used group. */
  readonly steps: Float64Array;
  readonly ramps: Float64Array;
}

/** Sorts the weights of components; `look` is the one that they were collected from. */
export function posteriorWeights(look: LookData, components: PosteriorComponents): PosteriorWeights {
  const { weights, stride, unchanged } = components;
  const { count } = look;
  const claim = stepRange(count);
  const claimFactor = (count - 1) / (claim.last - claim.first + 1);
  const cells = new Float64Array(look.cells.length);
  const steps = new Float64Array(count);
  const ramps = new Float64Array(count);
  const changed = new Float64Array(weights.length);
  const claimed = new Float64Array(weights.length);
  let total = 0;
  let still = 0;
  for (let g = 0; g < cells.length; g++) {
    let at = g * stride;
    let cell = 0;
    for (let i = 0; i < unchanged; i++) cell += weights[at++] as number;
    still += cell;
    for (let start = 1; start < count; start++, at++) {
      const weight = weights[at] as number;
      cell += weight;
      changed[at] = weight;
      if (start < claim.first || start > claim.last) continue;
      claimed[at] = weight * claimFactor;
      steps[start] = (steps[start] as number) + weight * claimFactor;
    }
    for (let start = 0; start <= count - 3; start++, at++) {
      const weight = weights[at] as number;
      cell += weight;
      changed[at] = weight;
      claimed[at] = weight;
      ramps[start] = (ramps[start] as number) + weight;
    }
    cells[g] = cell;
    total += cell;
  }
  return { noChange: still / total, cells: Array.from(cells, (cell) => cell / total), changed, claimed, steps, ramps };
}
