/**
 * Chance that a share of the second belief lies above one of the first; within a cell, half.
 *
 * `first`, `second`: belief of each cell of the same grid, ascending in the share, each summing to 1. Result 0 to 1.
 * Bad input: lists of different lengths throw a RangeError. Assumes that the two shares are independent.
 *
 * Source: the sum over both beliefs, cell by cell.
 */
export function shareAbove(first: Float64Array, second: Float64Array): number {
  if (first.length !== second.length)
    throw new RangeError(`the beliefs must share a grid, got ${first.length} and ${second.length} cells`);
  let below = 0;
  let above = 0;
  for (let j = 0; j < first.length; j++) {
    const weight = first[j] as number;
    above += (second[j] as number) * (below + weight / 2);
    below += weight;
  }
  return above;
}
