import { compensatedDot } from "./compensated-dot";
import { compensatedSum } from "./compensated-sum";
import { householderQr } from "./householder-qr";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";

/** A least-squares fit; coefficients stand in the order constant (if any), then the columns. */
export interface LeastSquares {
  /** In the unit of y over the unit of the column. */
  readonly coefficients: readonly number[];
  readonly standardErrors: readonly number[];
  /** Rows in the order of the coefficients; its rows' products times the residual variance are their covariances. */
  readonly factor: readonly (readonly number[])[];
  readonly residuals: readonly number[];
  readonly residualSquares: number;
  /** Number of values less number of coefficients. */
  readonly degrees: number;
  /** In the unit of y. */
  readonly residualSd: number;
  /** Share of the squares explained: about the mean with a constant, about 0 without; too-few counts different y, 2 needed. */
  readonly rSquared: Outcome<number>;
}

/** Rounds of correction with residuals taken to twice the working digits. */
const REFINEMENTS = 3;

/**
 * Fits y by a sum of columns times coefficients with the smallest sum of squared residuals.
 *
 * `columns`: one list for each term, each as long as `y` and in its order, any units; `model` says whether a
 * constant is added. Too few values for the coefficients and one degree of freedom: too-few, counting values.
 * Columns that depend on one another: too-few, counting independent terms. Bad input: unequal lengths, NaN or
 * infinity throws a RangeError. Assumes errors of one variance, independent of each other, for the standard errors.
 * With a constant the columns are centred, all are scaled by powers of two, solved by Householder reflections and
 * refined: 12 digits or more on the NIST sets Norris, NoInt1 and Longley.
 *
 * Source: Golub, G.H. & Van Loan, C.F. (1996), Matrix Computations, 5.2-5.3; refinement after Björck, Å. (1967),
 * BIT 7, 257-278.
 */
export function leastSquares(
  columns: readonly (readonly number[])[],
  y: readonly number[],
  model: "with-constant" | "through-origin",
): Outcome<LeastSquares> {
  requireFinite(y, "y");
  columns.forEach((column, index) => {
    requireFinite(column, `columns[${index}]`);
    if (column.length !== y.length)
      throw new RangeError(`columns[${index}] must have ${y.length} values, got ${column.length}`);
  });
  const constant = model === "with-constant";
  const terms = columns.length + (constant ? 1 : 0);
  const count = y.length;
  if (count <= terms) return tooFew(count, terms + 1);
  if (terms === 0) throw new RangeError("a fit needs a constant or a column, got neither");

  const centres = columns.map((column) => (constant ? compensatedSum(column) / count : 0));
  const centred = columns.map((column, j) => column.map((value) => value - (centres[j] as number)));
  const scales = centred.map((column) => powerOfTwoNear(Math.sqrt(compensatedDot(column, column) / count)));
  const scaled = centred.map((column, j) => column.map((value) => value / (scales[j] as number)));
  const design = constant ? [y.map(() => 1), ...scaled] : scaled;

  const { rank, solve, inverse } = householderQr(design);
  if (rank < terms) return tooFew(rank, terms);
  const rows = y.map((value, i) => [value, ...design.map((column) => -(column[i] as number))]);
  let solution = solve(y);
  let residuals = rows.map((row) => compensatedDot(row, [1, ...solution]));
  for (let round = 0; round < REFINEMENTS; round++) {
    const step = solve(residuals);
    solution = solution.map((value, j) => value + (step[j] as number));
    residuals = rows.map((row) => compensatedDot(row, [1, ...solution]));
  }

  const shift = constant ? 1 : 0;
  const slopes = columns.map((_, j) => (solution[j + shift] as number) / (scales[j] as number));
  const slopeRows = columns.map((_, j) =>
    (inverse[j + shift] as number[]).map((value) => value / (scales[j] as number)),
  );
  const away = [1, ...centres.map((centre) => -centre)];
  const coefficients = constant ? [compensatedDot(away, [solution[0] as number, ...slopes]), ...slopes] : slopes;
  const constantRow = (inverse[0] as number[]).map((value, k) =>
    compensatedDot(away, [value, ...slopeRows.map((row) => row[k] as number)]),
  );
  const factor = constant ? [constantRow, ...slopeRows] : slopeRows;

  const degrees = count - terms;
  const residualSquares = compensatedDot(residuals, residuals);
  const residualSd = Math.sqrt(residualSquares / degrees);
  const level = constant ? compensatedSum(y) / count : 0;
  const about = y.map((value) => value - level);
  const flat = constant ? y.every((value) => value === y[0]) : y.every((value) => value === 0);
  return ok({
    coefficients,
    standardErrors: factor.map((row) => residualSd * Math.sqrt(compensatedDot(row, row))),
    factor,
    residuals,
    residualSquares,
    degrees,
    residualSd,
    rSquared: flat ? tooFew(1, 2) : ok(1 - residualSquares / compensatedDot(about, about)),
  });
}

/** Scaling by a power of two rounds nothing; a column of nothing keeps the scale 1. */
function powerOfTwoNear(size: number): number {
  return size > 0 ? 2 ** Math.round(Math.log2(size)) : 1;
}
