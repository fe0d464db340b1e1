import type { CellSums, ShapeSums } from "./cell-sums";
import type { ShapeRange } from "./shapes";

/**
 * Log Bayes factor of a shape of unknown size ~ N(0, priorVariance) against none, the level unknown in both.
 *
 * `information` A = Sxx - Sx1^2/S11 and `score` B = Sxy - Sx1 S1y/S11 of the whitened columns. With no
 * correlation, known day sd and equal variances it is the textbook normal-normal Bayes factor.
 */
export function logShapeFactor(information: number, score: number, priorVariance: number): number {
  return 0.5 * ((score * score) / (information + 1 / priorVariance) - Math.log1p(priorVariance * information));
}

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

/** Fills `factors` for the starts of `range`, both ends included, and sums them. */
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
