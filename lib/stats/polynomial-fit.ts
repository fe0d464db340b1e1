import { compensatedDot } from "./compensated-dot";
import { compensatedSum } from "./compensated-sum";
import { type LeastSquares, leastSquares } from "./least-squares";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";

/**
 * The polynomial of a degree with the smallest sum of squared vertical distances.
 *
 * `x` and `y`: equal lengths, point by point, any order, any units; `degree`: whole, 1 or more. Result: coefficients
 * of 1, x, x squared and so on. No more points than coefficients: too-few, counting points. Fewer different x
 * than coefficients: too-few, counting different x. Bad input: unequal lengths, NaN, infinity, or a degree that isn't
 * whole throws a RangeError. Assumptions as `leastSquares`. The powers are taken of x centred and scaled, and
 * the coefficients carried back: that leaves 13 digits on the NIST set Filip (degree 10), where plain powers leave few or
 * none, and 9 on Wampler 1 and 4 (degree 5).
 *
 * Source: Seber, G.A.F. & Lee, A.J. (2003), Linear Regression Analysis, 7.1 (centring against ill-conditioned powers).
 */
export function polynomialFit(x: readonly number[], y: readonly number[], degree: number): Outcome<LeastSquares> {
  requireFinite(x, "x");
  requireFinite(y, "y");
  if (x.length !== y.length) throw new RangeError(`x must have ${y.length} values, got ${x.length}`);
  if (!Number.isInteger(degree) || degree < 1) throw new RangeError(`degree must be whole, 1 or more, got ${degree}`);
  if (x.length <= degree + 1) return tooFew(x.length, degree + 2);
  const different = new Set(x).size;
  if (different <= degree) return tooFew(different, degree + 1);

  const centre = compensatedSum(x) / x.length;
  const reach = 2 ** Math.ceil(Math.log2(Math.max(...x.map((value) => Math.abs(value - centre)))));
  const placed = x.map((value) => (value - centre) / reach);
  const powers = Array.from({ length: degree }, (_, k) => placed.map((value) => value ** (k + 1)));
  const fit = leastSquares(powers, y, "with-constant");
  if (fit.kind !== "ok") return fit;

  const back = carryBack(degree, centre, reach);
  const coefficients = back.map((row) => compensatedDot(row, fit.value.coefficients));
  const factor = back.map((row) =>
    row.map((_, k) =>
      compensatedDot(
        row,
        fit.value.factor.map((line) => line[k] as number),
      ),
    ),
  );
  const standardErrors = factor.map((row) => fit.value.residualSd * Math.sqrt(compensatedDot(row, row)));
  return ok({ ...fit.value, coefficients, factor, standardErrors });
}

/** Row j, column k: the share of the placed power k in the plain power j; choose(k, j) (-centre)^(k-j) / reach^k. */
function carryBack(degree: number, centre: number, reach: number): number[][] {
  const rows: number[][] = [];
  for (let j = 0; j <= degree; j++) {
    const row = new Array<number>(degree + 1).fill(0);
    let term = reach ** -j;
    for (let k = j; k <= degree; k++) {
      row[k] = term;
      term *= (((k + 1) / (k + 1 - j)) * -centre) / reach;
    }
    rows.push(row);
  }
  return rows;
}
