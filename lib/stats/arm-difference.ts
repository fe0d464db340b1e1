/**
 * Difference of the means of two arms, taken within strata: how much higher arm 1 is.
 *
 * `values`, `arms`, `strata`: lists of one length, in any order; an arm is 0 or 1, strata are numbered from 0. Result, in the
 * unit of the values: the mean over the strata that hold both arms of mean(1) - mean(0), each with the weight
 * n1 n0 / (n1 + n0); null where no stratum holds both. Bad input: lists of unequal length throw a RangeError; other than that none is
 * looked for, and NaN gives NaN. Assumes nothing: with random arms within strata it is unbiased.
 *
 * Source: the least-squares difference of two arms with a constant for each stratum; Cochran, W.G. (1954), Biometrics 10,
 * 417-451 (weights), from memory.
 */
export function armDifference(
  values: ArrayLike<number>,
  arms: ArrayLike<number>,
  strata: ArrayLike<number>,
): number | null {
  const { length } = values;
  if (arms.length !== length || strata.length !== length)
    throw new RangeError(`needs lists of one length, got ${length}, ${arms.length} and ${strata.length}`);
  let count = 0;
  for (let i = 0; i < length; i++) count = Math.max(count, (strata[i] as number) + 1);
  // Of each stratum: how many of arm 0 and arm 1, and their sums.
  const sums = new Float64Array(4 * count);
  for (let i = 0; i < length; i++) {
    const at = 4 * (strata[i] as number) + (arms[i] as number);
    sums[at] = (sums[at] as number) + 1;
    sums[at + 2] = (sums[at + 2] as number) + (values[i] as number);
  }
  let weights = 0;
  let total = 0;
  for (let at = 0; at < sums.length; at += 4) {
    const [none, one, sumNone, sumOne] = sums.subarray(at, at + 4) as unknown as [number, number, number, number];
    if (none === 0 || one === 0) continue;
    const weight = (one * none) / (one + none);
    weights += weight;
    total += weight * (sumOne / one - sumNone / none);
  }
  return weights === 0 ? null : total / weights;
}
