import { median, sampleStandardDeviation } from "simple-statistics";

/**
 * A series' own scale S0, in which day sds are counted before a pool is there to learn from.
 *
 * `values`: group values in date order, at least two, in the unit. `replicateSd`, `readingErrorSd`: in the
 * unit. The largest of (median |step between neighbours|) / 0.9539, 0.3 of the values' sd and 0.07 of the
 * replicate sd; where all of these are 0, 0.07 of the reading error. Multiplying every input by a factor
 * multiplies the answer by it. Throws on fewer than two values.
 */
export function startScale(values: readonly number[], replicateSd: number, readingErrorSd: number): number {
  if (values.length < 2) throw new RangeError(`a scale needs at least two values: ${values.length}`);
  const steps = values.slice(1).map((value, i) => Math.abs(value - (values[i] as number)));
  const scale = Math.max(median(steps) / 0.9539, 0.3 * sampleStandardDeviation(values as number[]), 0.07 * replicateSd);
  return scale > 0 ? scale : 0.07 * readingErrorSd;
}
