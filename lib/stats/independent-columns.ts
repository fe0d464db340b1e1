/** A column of which less than this share of its length is left beside the columns before it depends on them. */
const DEPENDENT = 1e-9;

/**
 * Which columns add something to those before them, a constant first of all.
 *
 * `columns`: all of one length, in the order in which they are kept rather than dropped, any units. Result: for each, in
 * that order, whether it is independent of a constant and the kept ones before it. No columns: none. Bad input: unequal
 * lengths, NaN or infinity throws a RangeError.
 *
 * Source: Gram-Schmidt orthogonalisation, done twice against rounding (Giraud, L., Langou, J. & Rozložník, M. (2005),
 * Computers & Mathematics with Applications 50, 1069-1075).
 */
export function independentColumns(columns: readonly (readonly number[])[]): readonly boolean[] {
  const count = columns[0]?.length ?? 0;
  const basis: number[][] = count === 0 ? [] : [new Array<number>(count).fill(1 / Math.sqrt(count))];
  return columns.map((column, index) => {
    if (column.length !== count) throw new RangeError(`columns[${index}] must have ${count} values: ${column.length}`);
    if (!column.every(Number.isFinite)) throw new RangeError(`columns[${index}] must be finite numbers`);
    const length = Math.hypot(...column);
    if (length === 0) return false;
    let rest = column.map((value) => value / length);
    for (let round = 0; round < 2; round++)
      for (const direction of basis) {
        const along = rest.reduce((sum, value, i) => sum + value * (direction[i] as number), 0);
        rest = rest.map((value, i) => value - along * (direction[i] as number));
      }
    const left = Math.hypot(...rest);
    if (left <= DEPENDENT) return false;
    basis.push(rest.map((value) => value / left));
    return true;
  });
}
