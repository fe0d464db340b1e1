/**
 * P-values adjusted for the chance of any false rejection: reject those at or below a level and at most that share of
 * lists holds a false rejection.
 *
 * `pValues`: 0 to 1, any order; the result has the same length and order, each at least the p-value and at most 1. Of no
 * values: none. Throws a RangeError on a value outside [0, 1] or NaN. Assumes nothing of how the p-values depend on each other.
 *
 * Source: Holm, S. (1979), Scandinavian Journal of Statistics 6, 65-70.
 */
export function holm(pValues: readonly number[]): number[] {
  for (const p of pValues) if (!(p >= 0 && p <= 1)) throw new RangeError(`a p-value must be in [0, 1]: ${p}`);
  const count = pValues.length;
  const order = pValues.map((_, i) => i).sort((a, b) => (pValues[a] as number) - (pValues[b] as number));
  const adjusted = new Array<number>(count).fill(1);
  let most = 0;
  order.forEach((index, fromBottom) => {
    most = Math.max(most, Math.min(1, (pValues[index] as number) * (count - fromBottom)));
    adjusted[index] = most;
  });
  return adjusted;
}
