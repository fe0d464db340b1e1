import type { NoiseModel } from "./noise-model";
import { startScale } from "./start-scale";

/** One cell of the nuisance grid as a look uses it: day sd in the unit. */
export interface NuisanceCell {
  readonly daySd: number;
  readonly correlation: number;
  readonly fadesBy: "groups" | "days";
  readonly errorPersistence: number;
  readonly weight: number;
  readonly logWeight: number;
}

/**
 * The cells of a noise model in the unit of one series; cells of weight 0 are left out.
 *
 * `values`: group values in date order, at least two, in the unit; they matter only for a `start` model,
 * whose day sds are multiples of the series' own scale (see `startScale`).
 */
export function nuisanceGrid(
  noise: NoiseModel,
  values: readonly number[],
  replicateSd: number,
  readingErrorSd: number,
): NuisanceCell[] {
  const scale = noise.kind === "start" ? startScale(values, replicateSd, readingErrorSd) : 1;
  return noise.cells
    .filter((cell) => cell.weight > 0)
    .map((cell) => ({
      daySd: cell.daySd * scale,
      correlation: cell.correlation,
      fadesBy: cell.fadesBy ?? "groups",
      errorPersistence: cell.errorPersistence ?? 0,
      weight: cell.weight,
      logWeight: Math.log(cell.weight),
    }));
}
