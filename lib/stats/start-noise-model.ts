import { NOISE_GRID, priorCells } from "./noise-grid";
import type { NoiseModel } from "./noise-model";

const DAY_SDS = [0.1, 0.3, 0.5, 0.7, 0.9, 1.15, 1.5, 2, 2.7];

/**
 * What is believed of noise before ten series are there to learn from: every day sd and correlation alike.
 *
 * Day sds are multiples of each series' own scale (see `startScale`), so no absolute number enters; correlations,
 * their fading and the persistence of the shared error are those of the grid in use. `id`: the name under which the
 * model is kept.
 */
export function startNoiseModel(id: string): NoiseModel {
  return {
    id,
    kind: "start",
    cells: priorCells({ ...NOISE_GRID, multiples: DAY_SDS }),
    replicateSd: null,
    spread: "local",
    priorChange: 0.2,
    learnedFrom: 0,
  };
}
