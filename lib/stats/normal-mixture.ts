/** A mixture of normal distributions: one entry a component; weights sum to 1, sds above 0. */
export interface NormalMixture {
  readonly weights: Float64Array;
  readonly means: Float64Array;
  readonly sds: Float64Array;
}

const NEGLIGIBLE = 1e-8;
const MEAN_STEP = 0.3;
const SD_STEP = 0.12;
const MOST_COLUMNS = 1024;
const MOST_ROWS = 64;

/**
 * A mixture from its components, near-equal ones merged.
 *
 * `weights` (0 or more, any total above 0), `means`, `variances` (above 0): one entry a component, same
 * length. Components below 1e-8 of the total are dropped. Those whose sds differ by less than 0.12 of the
 * smallest sd and whose means by less than 0.3 of their sd become one component, of the mean and variance
 * that they have together: mean and variance of the whole are kept, and its distribution function moves by
 * less than 0.001. Throws when no weight is above 0.
 */
export function normalMixture(weights: Float64Array, means: Float64Array, variances: Float64Array): NormalMixture {
  const length = weights.length;
  let total = 0;
  for (let i = 0; i < length; i++) total += weights[i] as number;
  if (!(total > 0 && Number.isFinite(total))) throw new RangeError(`a mixture needs weight: ${total}`);
  const floor = total * NEGLIGIBLE;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (let i = 0; i < length; i++) {
    if (!((weights[i] as number) > floor)) continue;
    const mean = means[i] as number;
    const variance = variances[i] as number;
    if (mean < low) low = mean;
    if (mean > high) high = mean;
    if (variance < least) least = variance;
    if (variance > most) most = variance;
  }
  const narrowest = Math.sqrt(least);
  const perRow = 1 / Math.max(SD_STEP, (Math.sqrt(most) / narrowest - 1) / (MOST_ROWS - 1));
  const rows = Math.floor((Math.sqrt(most) / narrowest - 1) * perRow) + 1;
  const width = Math.max(MEAN_STEP * narrowest, (high - low) / (MOST_COLUMNS - 1));
  const columns = Math.floor((high - low) / width) + 1;
  const mass = new Float64Array(columns * rows);
  const first = new Float64Array(columns * rows);
  const second = new Float64Array(columns * rows);
  for (let i = 0; i < length; i++) {
    const weight = weights[i] as number;
    if (!(weight > floor)) continue;
    const variance = variances[i] as number;
    const row = Math.min(rows - 1, Math.floor((Math.sqrt(variance) / narrowest - 1) * perRow));
    const fromLow = (means[i] as number) - low;
    const rowWidth = width * (1 + row / perRow);
    const column = Math.min(columns - 1, Math.floor(fromLow / rowWidth));
    const bin = row * columns + column;
    const offset = fromLow - (column + 0.5) * rowWidth;
    mass[bin] = (mass[bin] as number) + weight;
    first[bin] = (first[bin] as number) + weight * offset;
    second[bin] = (second[bin] as number) + weight * (variance + offset * offset);
  }
  let kept = 0;
  let keptMass = 0;
  for (let bin = 0; bin < mass.length; bin++) {
    const weight = mass[bin] as number;
    if (weight === 0) continue;
    const offset = (first[bin] as number) / weight;
    const rowWidth = width * (1 + Math.floor(bin / columns) / perRow);
    mass[kept] = weight;
    first[kept] = low + ((bin % columns) + 0.5) * rowWidth + offset;
    second[kept] = Math.sqrt((second[bin] as number) / weight - offset * offset);
    keptMass += weight;
    kept++;
  }
  return {
    weights: mass.slice(0, kept).map((weight) => weight / keptMass),
    means: first.slice(0, kept),
    sds: second.slice(0, kept),
  };
}
