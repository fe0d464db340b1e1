import { leastSquares } from "./least-squares";
import { type Outcome, ok } from "./outcome";
import { tQuantile } from "./t-distribution";

/** A straight line through points. */
export interface LinearFit {
  /** In the unit of y. */
  readonly intercept: number;
  /** In the unit of y over the unit of x. */
  readonly slope: number;
  readonly interceptStandardError: number;
  readonly slopeStandardError: number;
  /** 95 of 100 interval of the slope. */
  readonly slopeLow95: number;
  readonly slopeHigh95: number;
  readonly residualSd: number;
  readonly degrees: number;
}

/**
 * The straight line with the smallest sum of squared vertical distances.
 *
 * `x` and `y`: equal lengths, point by point, any order and spacing, any units. Fewer than three points: too-few,
 * counting points. All x equal: too-few, counting independent terms (1 of 2). Bad input: unequal lengths, NaN or
 * infinity throws a RangeError. The interval assumes independent normal errors of one variance.
 *
 * Source: least squares by Householder reflections (see `leastSquares`); NIST set Norris to 12 digits.
 */
export function linearFit(x: readonly number[], y: readonly number[]): Outcome<LinearFit> {
  const fit = leastSquares([x], y, "with-constant");
  if (fit.kind !== "ok") return fit;
  const [intercept, slope] = fit.value.coefficients as [number, number];
  const [interceptStandardError, slopeStandardError] = fit.value.standardErrors as [number, number];
  const reach = -tQuantile(0.025, fit.value.degrees) * slopeStandardError;
  return ok({
    intercept,
    slope,
    interceptStandardError,
    slopeStandardError,
    slopeLow95: slope - reach,
    slopeHigh95: slope + reach,
    residualSd: fit.value.residualSd,
    degrees: fit.value.degrees,
  });
}
