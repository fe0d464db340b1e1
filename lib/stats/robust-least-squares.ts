import { compensatedDot } from "./compensated-dot";
import { type LeastSquares, leastSquares } from "./least-squares";
import { type Outcome, ok } from "./outcome";

/** A least-squares fit whose standard errors stand however the spread differs from value to value. */
export interface RobustLeastSquares {
  readonly fit: LeastSquares;
  /** HC3 standard errors in the order of the coefficients, in their units. */
  readonly standardErrors: readonly number[];
  /** Share of each value in its own fit, 0 to 1, in the order of y. */
  readonly leverages: readonly number[];
  /** How much each coefficient (rows) falls when one value (columns, in the order of y) is left out, in its unit. */
  readonly influence: readonly (readonly number[])[];
}

/** A value that determines its own fit: it says nothing of the spread, and nothing changes in the others without it. */
const ALONE = 1 - 1e-9;

/**
 * Least squares with heteroscedasticity-consistent standard errors (HC3).
 *
 * `columns`, `y`, `model`: as in `leastSquares`, with its answers of too-few and its RangeErrors. Each squared residual is
 * divided by the square of one less its leverage; a value of leverage 1 counts as nothing. Assumes independent errors of
 * mean 0.
 *
 * Source: MacKinnon, J.G. & White, H. (1985), Journal of Econometrics 29, 305-325.
 */
export function robustLeastSquares(
  columns: readonly (readonly number[])[],
  y: readonly number[],
  model: "with-constant" | "through-origin",
): Outcome<RobustLeastSquares> {
  const found = leastSquares(columns, y, model);
  if (found.kind !== "ok") return found;
  const fit = found.value;
  const terms = fit.factor.length;
  // Rows of X times the factor are orthonormal columns Q: leverages are their squares, and pulls are Q times the factor.
  const orthonormal = y.map((_, i) => {
    const row = [...(model === "with-constant" ? [1] : []), ...columns.map((column) => column[i] as number)];
    return Array.from({ length: terms }, (_, k) =>
      compensatedDot(
        row,
        fit.factor.map((of) => of[k] as number),
      ),
    );
  });
  const leverages = orthonormal.map((row) => Math.min(1, compensatedDot(row, row)));
  const pulls = fit.factor.map((of) => orthonormal.map((row) => dot(row, of)));
  const influence = pulls.map((pull) =>
    pull.map((value, i) => (alone(leverages[i]) ? 0 : (value * at(fit.residuals, i)) / (1 - at(leverages, i)))),
  );
  return ok({ fit, standardErrors: influence.map((row) => Math.hypot(...row)), leverages, influence });
}

function alone(leverage: number | undefined): boolean {
  return (leverage ?? 0) >= ALONE;
}

function at(values: readonly number[], index: number): number {
  return values[index] as number;
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * at(b, i), 0);
}
