/**
 * P-values adjusted for the false discovery rate: reject those at or below q and at most a share q of the
 * rejections is expected to be false.
 *
 * `pValues`: 0 to 1, any order; the result has the same length and order. Of no values: none. Throws on a
 * value outside [0, 1] or NaN. Assumes independent (or positively dependent) p-values.
 * Source: Benjamini & Hochberg (1995), J. R. Statist. Soc. B 57.
 */
export function benjaminiHochberg(pValues: readonly number[]): number[] {
  for (const p of pValues) if (!(p >= 0 && p <= 1)) throw new RangeError(`a p-value must be in [0, 1]: ${p}`);
  const count = pValues.length;
  // Of many, most are 1, and adjusted they stay so: only the others are put in order.
  const order = pValues.flatMap((p, i) => (p < 1 ? [i] : []));
  order.sort((a, b) => (pValues[b] as number) - (pValues[a] as number));
  const adjusted = new Array<number>(count).fill(1);
  let least = 1;
  order.forEach((index, place) => {
    const fromTop = count - order.length + place;
    least = Math.min(least, ((pValues[index] as number) * count) / (count - fromTop));
    adjusted[index] = least;
  });
  return adjusted;
}
