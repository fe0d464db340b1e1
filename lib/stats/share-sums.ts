import type { ShareGrid } from "./share-grid";
import { type ShareSide, shareSide } from "./share-side";

/** What any stretch of the groups says of its share, at one correlation. */
export interface ShareSums {
  /** Groups `from` to before `to`, indices from 0; `from` = `to` gives what is believed without a group. */
  stretch(from: number, to: number): ShareSide;
}

/**
 * Running sums of the groups' log chances, so that any stretch of them costs one pass over the grid.
 *
 * `grid`: see `shareGrid`; `correlation`: index of one of its correlations. An index outside the groups throws a RangeError.
 *
 * Source: own construction, sums of the first groups taken from sums of more; digits lost are of the sums' own size,
 * some 1e-13 of a log.
 */
export function shareSums(grid: ShareGrid, correlation: number): ShareSums {
  const lists = grid.logs[correlation];
  if (lists === undefined) throw new RangeError(`the grid has no correlation ${correlation}`);
  const cells = grid.shares.length;
  const sums = [new Float64Array(cells)];
  for (const list of lists) {
    const last = sums.at(-1) as Float64Array;
    sums.push(last.map((sum, j) => sum + (list[j] as number)));
  }
  const masses = grid.masses.map(Math.log);
  return {
    stretch: (from, to) => {
      const [start, end] = [sums[from], sums[to]];
      if (start === undefined || end === undefined || from > to)
        throw new RangeError(`there are ${lists.length} groups, no stretch ${from} to ${to}`);
      const logs = new Float64Array(cells);
      for (let j = 0; j < cells; j++) logs[j] = (masses[j] as number) + (end[j] as number) - (start[j] as number);
      return shareSide(logs);
    },
  };
}
