/**
 * Smallest set of indices that holds at least `share` of the weight; the result is in ascending order.
 *
 * `weights`: 0 or more, one entry an index, not all 0. Ties go to the earlier index. Throws when there is no weight.
 */
export function smallestSet(weights: ArrayLike<number>, share: number): number[] {
  const order = Array.from({ length: weights.length }, (_, i) => i);
  order.sort((a, b) => (weights[b] as number) - (weights[a] as number) || a - b);
  let total = 0;
  for (const i of order) total += weights[i] as number;
  if (!(total > 0)) throw new RangeError(`a set needs weight: ${total}`);
  const set: number[] = [];
  let held = 0;
  for (const i of order) {
    if (held >= share * total) break;
    held += weights[i] as number;
    set.push(i);
  }
  return set.sort((a, b) => a - b);
}
