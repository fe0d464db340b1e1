import type { CellSums, ShapeSums } from "./cell-sums";
import type { ShapeRange } from "./shapes";

/** A family of shapes at one nuisance cell; the arrays have one entry a start, entry k for start k. */
export interface ShapeFactors {
  /** Bayes factors relative to exp(`peak`). */
  readonly factor: Float64Array;
  readonly information: Float64Array;
  readonly score: Float64Array;
  /** Largest exponent among the factors, 0 or more. */
  peak: number;
  /** Sum of `factor` over the starts. */
  sum: number;
  /** The part of `sum` whose score points up; a score of exactly 0 counts half. */
  up: number;
}

/** Room for the factors of `count` starts. */
export function emptyShapeFactors(count: number): ShapeFactors {
  const room = (): Float64Array => new Float64Array(count);
  return { factor: room(), information: room(), score: room(), peak: 0, sum: 0, up: 0 };
}

/**
 * Fills `factors` with Bayes factors of shapes of unknown size ~ N(0, `priorVariance`) against none, the level
 * unknown in both, for the starts of `range` (both ends included), and sums them.
 *
 * Of the whitened columns: information A = Sxx - Sx1^2/S11, score B = Sxy - Sx1 S1y/S11, and the factor is
 * (1 + V A)^(-1/2) exp(B^2 / (2 (A + 1/V))). With no correlation, known day sd and equal variances it is the
 * textbook normal-normal Bayes factor. Source: Kass & Raftery (1995), JASA 90.
 */
export function fillShapeFactors(
  sums: CellSums,
  shape: ShapeSums,
  range: ShapeRange,
  priorVariance: number,
  factors: ShapeFactors,
): void {
  const { factor, information, score } = factors;
  const inverse = 1 / sums.oneOne;
  const level = sums.oneY * inverse;
  const precision = 1 / priorVariance;
  let peak = 0;
  for (let k = range.first; k <= range.last; k++) {
    const x1 = shape.x1[k] as number;
    const a = Math.max(0, (shape.xx[k] as number) - x1 * x1 * inverse);
    const b = (shape.xy[k] as number) - x1 * level;
    const exponent = (0.5 * b * b) / (a + precision);
    information[k] = a;
    score[k] = b;
    factor[k] = exponent;
    if (exponent > peak) peak = exponent;
  }
  let sum = 0;
  let up = 0;
  for (let k = range.first; k <= range.last; k++) {
    const part = Math.exp((factor[k] as number) - peak) / Math.sqrt(1 + priorVariance * (information[k] as number));
    factor[k] = part;
    const b = score[k] as number;
    sum += part;
    if (b > 0) up += part;
    else if (b === 0) up += part / 2;
  }
  factors.peak = peak;
  factors.sum = sum;
  factors.up = up;
}
