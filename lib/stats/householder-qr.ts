/** What a factored design can do. */
export interface HouseholderQr {
  /** Number of independent columns, as far as doubles can tell. */
  readonly rank: number;
  /** Least-squares coefficients for a right-hand side; only at full rank. */
  solve(right: readonly number[]): number[];
  /** Inverse of the triangular factor, by rows; only at full rank, otherwise empty. */
  readonly inverse: readonly number[][];
}

/** A pivot below this share of its column's length counts as dependent on the columns before it. */
const DEPENDENT = 1e-13;

/**
 * Factors a tall matrix into an orthogonal and an upper triangular one by Householder reflections.
 *
 * `design`: its columns, at least one, all of one length that is no less than their number, already of like size.
 * Result as `HouseholderQr` says. Columns that depend on one another show as a rank below their number, and
 * then `solve` throws. Bad input: fewer rows than columns throws a RangeError; NaN is for callers to refuse.
 *
 * Source: Golub, G.H. & Van Loan, C.F. (1996), Matrix Computations, algorithm 5.2.1.
 */
export function householderQr(design: readonly (readonly number[])[]): HouseholderQr {
  const terms = design.length;
  const count = design[0]?.length ?? 0;
  if (terms === 0 || count < terms) throw new RangeError(`a design needs 1 to ${count} columns, got ${terms}`);
  const work = design.map((column) => [...column]);
  const lengths = work.map((column) => Math.hypot(...column));
  const mirrors: number[][] = [];
  let rank = 0;
  for (let k = 0; k < terms; k++) {
    const column = work[k] as number[];
    const length = Math.hypot(...column.slice(k));
    if (length > DEPENDENT * (lengths[k] as number)) rank++;
    const mirror = column.slice(k);
    mirror[0] = (mirror[0] as number) + ((mirror[0] as number) < 0 ? -length : length);
    mirrors.push(mirror);
    for (let j = k; j < terms; j++) reflect(work[j] as number[], mirror, k);
  }

  const entry = (row: number, column: number): number => (work[column] as number[])[row] as number;
  const backward = (right: number[]): number[] => {
    const solution = new Array<number>(terms).fill(0);
    for (let i = terms - 1; i >= 0; i--) {
      let rest = right[i] as number;
      for (let j = i + 1; j < terms; j++) rest -= entry(i, j) * (solution[j] as number);
      solution[i] = rest / entry(i, i);
    }
    return solution;
  };
  const inverseColumns = rank === terms ? design.map((_, k) => backward(design.map((_, i) => (i === k ? 1 : 0)))) : [];
  return {
    rank,
    solve(right) {
      if (rank < terms) throw new RangeError(`columns depend on one another: rank ${rank} of ${terms}`);
      const turned = [...right];
      mirrors.forEach((mirror, k) => {
        reflect(turned, mirror, k);
      });
      return backward(turned);
    },
    inverse: inverseColumns.map((_, i) => inverseColumns.map((column) => column[i] as number)),
  };
}

/** Mirrors the part of a column from `from` on, in place. */
function reflect(column: number[], mirror: readonly number[], from: number): void {
  let product = 0;
  let square = 0;
  for (let i = 0; i < mirror.length; i++) {
    product += (mirror[i] as number) * (column[from + i] as number);
    square += (mirror[i] as number) ** 2;
  }
  if (square === 0) return;
  const twice = (2 * product) / square;
  for (let i = 0; i < mirror.length; i++)
    column[from + i] = (column[from + i] as number) - twice * (mirror[i] as number);
}
