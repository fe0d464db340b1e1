import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";

/** The best way to cut a list into stretches of one level each. */
export interface ExactSegmentation {
  /** Sum of squared distances from the stretches' means, in the unit of the values, squared. */
  readonly squares: number;
  /** Index (from 0) of the first value of each stretch but the first, rising; as many as there are changes. */
  readonly starts: readonly number[];
}

/**
 * Cuts a list into `changes` + 1 stretches so that the sum of squares within them is the smallest possible.
 *
 * `values`: in order, one unit; `changes`: whole, 0 or more; `shortest`: fewest values in a stretch, 1 or more. Exact: a
 * dynamic programme looks at every cut; of equally good cuts it keeps the one whose last changes come earliest. Too short a
 * list: too-few, counting values. Bad input: NaN, infinity, or numbers that aren't whole throw a RangeError. Assumes nothing; as an
 * estimate it is best for independent errors of one variance. Time grows with changes times length squared.
 *
 * Source: Fisher, W.D. (1958), Journal of the American Statistical Association 53, 789-798; Auger, I.E. & Lawrence, C.E. (1989),
 * Bulletin of Mathematical Biology 51, 39-54.
 */
export function exactSegmentation(
  values: readonly number[],
  changes: number,
  shortest: number,
): Outcome<ExactSegmentation> {
  requireFinite(values, "values");
  if (!Number.isInteger(changes) || changes < 0)
    throw new RangeError(`changes must be whole, 0 or more, got ${changes}`);
  if (!Number.isInteger(shortest) || shortest < 1)
    throw new RangeError(`shortest must be whole, 1 or more, got ${shortest}`);
  const count = values.length;
  const need = (changes + 1) * shortest;
  if (count < need) return tooFew(count, need);

  const cost = squaresFromEachStart(values);
  let best = Array.from({ length: count + 1 }, (_, end) =>
    end >= shortest ? ((cost[0] as number[])[end] as number) : Infinity,
  );
  const cameFrom: number[][] = [];
  for (let change = 1; change <= changes; change++) {
    const next = new Array<number>(count + 1).fill(Infinity);
    const from = new Array<number>(count + 1).fill(0);
    for (let end = (change + 1) * shortest; end <= count; end++) {
      for (let start = change * shortest; start <= end - shortest; start++) {
        const squares = (best[start] as number) + ((cost[start] as number[])[end] as number);
        if (squares < (next[end] as number)) {
          next[end] = squares;
          from[end] = start;
        }
      }
    }
    best = next;
    cameFrom.push(from);
  }
  const starts: number[] = [];
  let end = count;
  for (const from of cameFrom.reverse()) {
    end = from[end] as number;
    starts.unshift(end);
  }
  return ok({ squares: best[count] as number, starts });
}

/** Entry [start][end]: squares about the mean of values start to end - 1, by Welford's updating. */
function squaresFromEachStart(values: readonly number[]): number[][] {
  return values.map((_, start) => {
    const row = new Array<number>(values.length + 1).fill(0);
    let mean = 0;
    let squares = 0;
    for (let end = start + 1; end <= values.length; end++) {
      const value = values[end - 1] as number;
      const gap = value - mean;
      mean += gap / (end - start);
      squares += gap * (value - mean);
      row[end] = squares;
    }
    return row;
  });
}
