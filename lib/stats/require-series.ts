import type { NoiseModel } from "./noise-model";
import type { Series } from "./series";

/**
 * Throws, with the offending value, when a series or a noise model can't be what it claims to be.
 *
 * Checked: every number finite; shared error sds and the offset sd 0 or more; the reading error sd above
 * 0; whole days in order; a used group holds a replicate; a starting belief has an sd above 0; cells
 * exist, their day sds are above 0, correlations and persistences in [0, 1), weights 0 or more and summing to 1.
 */
export function requireSeries(series: Series): void {
  const fail = (what: string, value: unknown): never => {
    throw new RangeError(`${what}: ${String(value)}`);
  };
  if (!(series.readingErrorSd > 0 && Number.isFinite(series.readingErrorSd)))
    fail("the reading error sd must be above 0", series.readingErrorSd);
  if (!(series.offsetSd >= 0 && Number.isFinite(series.offsetSd)))
    fail("the offset sd must be 0 or more", series.offsetSd);
  if (series.start !== null) {
    if (!Number.isFinite(series.start.mean)) fail("the mean of the starting belief must be finite", series.start.mean);
    if (!(series.start.sd > 0 && Number.isFinite(series.start.sd)))
      fail("the sd of the starting belief must be above 0", series.start.sd);
  }
  let previous = Number.NEGATIVE_INFINITY;
  series.groups.forEach((group, index) => {
    if (!Number.isInteger(group.day)) fail(`the day of group ${index} must be whole`, group.day);
    if (group.day < previous) fail(`group ${index} must not stand before the one it follows, day`, group.day);
    previous = group.day;
    if (!(group.sharedErrorSd >= 0 && Number.isFinite(group.sharedErrorSd)))
      fail(`the shared error sd of group ${index} must be 0 or more`, group.sharedErrorSd);
    if (group.used && group.values.length === 0) fail("a used group must hold a replicate, group", index);
    for (const value of group.values)
      if (!Number.isFinite(value)) fail(`a replicate of group ${index} must be finite`, value);
  });
}

/** Throws, with the offending value, when a noise model breaks the promises of its own fields (see `requireSeries`). */
export function requireNoiseModel(noise: NoiseModel): void {
  let total = 0;
  for (const cell of noise.cells) {
    if (!(cell.daySd > 0 && Number.isFinite(cell.daySd)))
      throw new RangeError(`the day sd of a cell must be above 0: ${cell.daySd}`);
    if (!(cell.correlation >= 0 && cell.correlation < 1))
      throw new RangeError(`the correlation of a cell must be in [0, 1): ${cell.correlation}`);
    const persistence = cell.errorPersistence ?? 0;
    if (!(persistence >= 0 && persistence < 1))
      throw new RangeError(`the error persistence of a cell must be in [0, 1): ${persistence}`);
    if (!(cell.weight >= 0)) throw new RangeError(`the weight of a cell must be 0 or more: ${cell.weight}`);
    total += cell.weight;
  }
  if (!(Math.abs(total - 1) < 1e-6)) throw new RangeError(`the weights of the cells must sum to 1: ${total}`);
  if (noise.replicateSd !== null && !(noise.replicateSd > 0 && Number.isFinite(noise.replicateSd)))
    throw new RangeError(`the replicate sd of a noise model must be above 0: ${noise.replicateSd}`);
}
