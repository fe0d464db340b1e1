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
  readonly logFactor: Float64Array;
  readonly information: Float64Array;
  readonly score: Float64Array;
  /** Largest log factor over the claimable starts. */
  peak: number;
  /** Sum of exp(log factor - peak) over the claimable starts. */
  sum: number;
  /** The part of `sum` whose score points up; a score of exactly 0 counts half. */
  up: number;
}

/** Room for the factors of `count` starts. */
export function emptyShapeFactors(count: number): ShapeFactors {
  return {
    logFactor: new Float64Array(count),
    information: new Float64Array(count),
    score: new Float64Array(count),
    peak: 0,
    sum: 0,
    up: 0,
  };
}

/** Fills `factors` for starts `first` to `last`, and sums them over `claim`, a range within. */
export function fillShapeFactors(
  sums: CellSums,
  shape: ShapeSums,
  all: ShapeRange,
  claim: ShapeRange,
  priorVariance: number,
  factors: ShapeFactors,
): void {
  const { logFactor, information, score } = factors;
  const inverse = 1 / sums.oneOne;
  const level = sums.oneY * inverse;
  let peak = Number.NEGATIVE_INFINITY;
  for (let k = all.first; k <= all.last; k++) {
    const x1 = shape.x1[k] as number;
    const a = Math.max(0, (shape.xx[k] as number) - x1 * x1 * inverse);
    const b = (shape.xy[k] as number) - x1 * level;
    const log = logShapeFactor(a, b, priorVariance);
    information[k] = a;
    score[k] = b;
    logFactor[k] = log;
    if (log > peak && k >= claim.first && k <= claim.last) peak = log;
  }
  let sum = 0;
  let up = 0;
  for (let k = claim.first; k <= claim.last; k++) {
    const part = Math.exp((logFactor[k] as number) - peak);
    const b = score[k] as number;
    sum += part;
    if (b > 0) up += part;
    else if (b === 0) up += part / 2;
  }
  factors.peak = peak;
  factors.sum = sum;
  factors.up = up;
}
