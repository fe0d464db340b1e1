import { requireFinite } from "./require-finite";

/** What doubt about its arguments makes of a function's value. */
export interface FirstOrderSpread {
  /** At the means. */
  readonly value: number;
  /** Change of the value per unit of each argument, in their order. */
  readonly gradient: readonly number[];
  readonly sd: number;
}

/**
 * Value and sd of a function of doubted numbers, to first order (the delta method).
 *
 * `of`: the function; `means`: its arguments' means; `covariance`: rows in the same order, symmetric. Slopes are central
 * differences over a hundredth of each argument's sd, so `of` has to be smooth there; an argument without doubt adds nothing.
 * Bad input: a covariance of another size, a variance below 0, NaN or infinity throws a RangeError. Assumes that the
 * function is nearly straight over an sd or two.
 *
 * Source: Casella, G. & Berger, R.L. (2002), Statistical Inference, 5.5.4.
 */
export function firstOrderSpread(
  of: (at: readonly number[]) => number,
  means: readonly number[],
  covariance: readonly (readonly number[])[],
): FirstOrderSpread {
  requireFinite(means, "means");
  if (covariance.length !== means.length)
    throw new RangeError(`the covariance must have ${means.length} rows, got ${covariance.length}`);
  const sds = covariance.map((row, i) => {
    requireFinite(row, `covariance[${i}]`);
    if (row.length !== means.length)
      throw new RangeError(`covariance[${i}] must have ${means.length} values, got ${row.length}`);
    const variance = row[i] as number;
    if (variance < 0) throw new RangeError(`a variance is 0 or more, got ${variance}`);
    return Math.sqrt(variance);
  });
  const gradient = means.map((mean, i) => {
    const step = (sds[i] as number) / 100;
    if (step === 0) return 0;
    const moved = (by: number): readonly number[] => means.map((each, k) => (k === i ? mean + by : each));
    return (of(moved(step)) - of(moved(-step))) / (2 * step);
  });
  let variance = 0;
  for (const [i, row] of covariance.entries())
    for (const [k, entry] of row.entries()) variance += (gradient[i] as number) * (gradient[k] as number) * entry;
  return { value: of(means), gradient, sd: Math.sqrt(Math.max(0, variance)) };
}
