import type { NoiseModel } from "./noise-model";

const DAY_SDS = [0.1, 0.3, 0.5, 0.7, 0.9, 1.15, 1.5, 2, 2.7];
const CORRELATIONS = [0, 0.15, 0.3, 0.45];

/**
 * What is believed of noise before ten series are there to learn from: every cell alike.
 *
 * Day sds are multiples of each series' own scale (see `startScale`), so no absolute number enters.
 * `id`: the name under which the model is kept.
 */
export function startNoiseModel(id: string): NoiseModel {
  const weight = 1 / (DAY_SDS.length * CORRELATIONS.length);
  return {
    id,
    kind: "start",
    cells: DAY_SDS.flatMap((daySd) => CORRELATIONS.map((correlation) => ({ daySd, correlation, weight }))),
    replicateSd: null,
    priorChange: 0.2,
    learnedFrom: 0,
  };
}
