import { compensatedDot } from "./compensated-dot";
import { householderQr } from "./householder-qr";
import { requirePositive } from "./require-positive";

/** Whether the curve's height at place 0 is free, or held at 0. */
export type ExponentialStart = "free" | "zero";

/** Points made ready for a search; lists of one length, point by point. */
export interface ExponentialPoints {
  /** 0 or more, the range of x as the unit. */
  readonly places: readonly number[];
  /** Square roots of the weights. */
  readonly roots: readonly number[];
  /** Values times the roots of their weights. */
  readonly heights: readonly number[];
  readonly start: ExponentialStart;
}

/** The best curve of one bend: level + climb (1 - exp(-bend place)) / bend. */
export interface ExponentialProfile {
  /** Height at place 0, in the unit of the values; 0 when it is held there. */
  readonly level: number;
  /** Slope at place 0. */
  readonly climb: number;
  /** Weighted sum of squared residuals. */
  readonly squares: number;
  /** How that sum changes with the bend. */
  readonly slope: number;
}

/**
 * The exponential of a given bend with the smallest weighted squares, and where a better bend lies.
 *
 * `bend`: rate times the range of x, above 0; `points`: see its fields. At one bend the curve is linear in what is left, so
 * this is a plain least-squares fit; the slope of its squares needs no slope of level and climb, which are at their
 * best. Too few different places for the two terms, or a bend that isn't above 0: a RangeError. Assumes finite numbers.
 *
 * Source: Golub, G.H. & Pereyra, V. (1973), SIAM Journal on Numerical Analysis 10, 413-432 (variable projection).
 */
export function exponentialProfile(bend: number, points: ExponentialPoints): ExponentialProfile {
  requirePositive(bend, "bend");
  const { places, roots, heights, start } = points;
  const rise = places.map((place) => -Math.expm1(-bend * place) / bend);
  const column = rise.map((value, i) => value * (roots[i] as number));
  const solution = householderQr(start === "free" ? [roots, column] : [column]).solve(heights);
  const [level, climb] = (start === "free" ? solution : [0, ...solution]) as [number, number];
  const residuals = heights.map((height, i) => height - level * (roots[i] as number) - climb * (column[i] as number));
  const turns = places.map(
    (place, i) => ((place * Math.exp(-bend * place) - (rise[i] as number)) / bend) * (roots[i] as number),
  );
  return {
    level,
    climb,
    squares: compensatedDot(residuals, residuals),
    slope: -2 * climb * compensatedDot(residuals, turns),
  };
}
