import { compensatedDot } from "./compensated-dot";
import { type ExponentialPoints, type ExponentialStart, exponentialProfile } from "./exponential-profile";
import { householderQr } from "./householder-qr";
import { ok, type TooFew, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";
import { requirePositive } from "./require-positive";

/** A level that is neared at a slowing pace: y = asymptote + amplitude exp(-rate x). */
export interface ExponentialFit {
  /** In the unit of y; what the curve nears. */
  readonly asymptote: number;
  /** Curve less asymptote at x = 0, in the unit of y. */
  readonly amplitude: number;
  /** Above 0, in one over the unit of x. */
  readonly rate: number;
  /** Of asymptote, amplitude and rate, in this order; rows and columns. */
  readonly covariance: readonly (readonly number[])[];
  /** Square roots of the covariance's diagonal. */
  readonly standardErrors: readonly [number, number, number];
  readonly residuals: readonly number[];
  /** Weighted sum of squared residuals. */
  readonly residualSquares: number;
  readonly degrees: number;
  /** Of a value of weight 1, in the unit of y. */
  readonly residualSd: number;
}

/** A fit, too little, or points that show no curve: no bend towards a level (straight), or none left after the first x (step). */
export type ExponentialOutcome =
  | { readonly kind: "ok"; readonly value: ExponentialFit }
  | TooFew
  | { readonly kind: "no-curvature"; readonly points: "flat" | "straight" | "step" };

/** Rate times range: at the least one the curve leaves a straight line by an eightieth of its rise. */
const LEAST_BEND = 0.1;

/** At the greatest the curve is over, to a share of exp(-10), between the first two x. */
const MOST_BEND = 10;

/** Steps of the search, even in the logarithm. */
const SEARCH_STEPS = 200;

/** Halvings of the bracket: past what a double can tell apart. */
const BISECTIONS = 60;

/**
 * The curve that nears a level exponentially, with the smallest weighted sum of squared residuals.
 *
 * `x`, `y`: equal lengths, point by point, any order; x counted from near its first value; `weights`: above 0, one a point,
 * or absent for equal ones; `start`: whether the curve's height at x = 0 is
 * free, or held at 0 (then x of 0 or more). Fewer than four different x (zero: three above
 * 0): too-few, counting them. Best rate at an end of the search: no-curvature. Bad input: unequal lengths, NaN, infinity,
 * a weight that isn't above 0 or, with "zero", an x below 0 throws a RangeError. Assumes independent normal errors of
 * variance over weight. For each rate the rest is linear, so one number is searched; the zero of the slope of the
 * profile is then halved down to a double.
 *
 * Source: Golub, G.H. & Pereyra, V. (1973), SIAM Journal on Numerical Analysis 10, 413-432 (variable projection); errors
 * after Bates, D.M. & Watts, D.G. (1988), Nonlinear Regression Analysis, 2.
 */
export function exponentialFit(
  x: readonly number[],
  y: readonly number[],
  start: ExponentialStart = "free",
  weights: readonly number[] = x.map(() => 1),
): ExponentialOutcome {
  requireFinite(x, "x");
  requireFinite(y, "y");
  weights.forEach((weight, i) => {
    requirePositive(weight, `weights[${i}]`);
  });
  if (x.length !== y.length) throw new RangeError(`x must have ${y.length} values, got ${x.length}`);
  if (weights.length !== y.length) throw new RangeError(`weights must have ${y.length} values, got ${weights.length}`);
  const free = start === "free";
  if (!free && x.some((value) => value < 0)) throw new RangeError(`x must be 0 or more, got ${Math.min(...x)}`);
  const different = [...new Set(free ? x : x.filter((value) => value > 0))].sort((a, b) => a - b);
  const need = free ? 4 : 3;
  if (different.length < need) return tooFew(different.length, need);
  if (y.every((value) => value === (free ? y[0] : 0))) return { kind: "no-curvature", points: "flat" };

  const from = free ? (different[0] as number) : 0;
  const range = (different.at(-1) as number) - from;
  const places = x.map((value) => (value - from) / range);
  const roots = weights.map(Math.sqrt);
  const heights = y.map((value, i) => value * (roots[i] as number));
  const points: ExponentialPoints = { places, roots, heights, start };

  const gap = ((different[free ? 1 : 0] as number) - from) / range;
  const most = Math.max(MOST_BEND / gap, 2 * LEAST_BEND);
  const bends = Array.from(
    { length: SEARCH_STEPS + 1 },
    (_, i) => LEAST_BEND * (most / LEAST_BEND) ** (i / SEARCH_STEPS),
  );
  const squares = bends.map((bend) => exponentialProfile(bend, points).squares);
  const best = squares.indexOf(Math.min(...squares));
  if (best === 0) return { kind: "no-curvature", points: "straight" };
  if (best === SEARCH_STEPS) return { kind: "no-curvature", points: "step" };
  let low = bends[best - 1] as number;
  let high = bends[best + 1] as number;
  for (let round = 0; round < BISECTIONS; round++) {
    const middle = Math.sqrt(low * high);
    if (exponentialProfile(middle, points).slope < 0) low = middle;
    else high = middle;
  }
  return described(Math.sqrt(low * high), points, { y, from, range });
}

/** The best curve in terms of x as given, with its errors; x = from + range times place. */
function described(
  bend: number,
  points: ExponentialPoints,
  { y, from, range }: { readonly y: readonly number[]; readonly from: number; readonly range: number },
): ExponentialOutcome {
  const { places, roots, start } = points;
  const { level, climb } = exponentialProfile(bend, points);
  const drop = -climb / bend;
  const asymptote = level - drop;
  const carried = Math.exp((bend * from) / range);
  const amplitude = drop * carried;
  if (!Number.isFinite(amplitude)) throw new RangeError(`x must be counted from near its first value, got ${from}`);

  const decay = places.map((place) => Math.exp(-bend * place));
  const byDrop = decay.map((left, i) => left * (roots[i] as number));
  const byBend = decay.map((left, i) => -drop * (places[i] as number) * left * (roots[i] as number));
  const free = start === "free";
  const design = free ? [roots, byDrop, byBend] : [roots.map((root, i) => root - (byDrop[i] as number)), byBend];
  const { rank, inverse } = householderQr(design);
  if (rank < design.length) return { kind: "no-curvature", points: "flat" };
  // How asymptote, amplitude and rate move with what the columns stand for.
  const byRate = [(amplitude * from) / range, 1 / range] as const;
  const moves = free
    ? [
        [1, 0, 0],
        [0, carried, byRate[0]],
        [0, 0, byRate[1]],
      ]
    : [
        [1, 0],
        [-1, 0],
        [0, byRate[1]],
      ];
  const factor = moves.map((row) =>
    design.map((_, k) =>
      compensatedDot(
        row,
        inverse.map((line) => line[k] as number),
      ),
    ),
  );

  const residuals = y.map((value, i) => value - asymptote - drop * (decay[i] as number));
  const weighted = residuals.map((residual, i) => residual * (roots[i] as number));
  const residualSquares = compensatedDot(weighted, weighted);
  const degrees = y.length - design.length;
  const covariance = factor.map((row) =>
    factor.map((other) => (residualSquares / degrees) * compensatedDot(row, other)),
  );
  return ok({
    asymptote,
    amplitude,
    rate: bend / range,
    covariance,
    standardErrors: covariance.map((row, k) => Math.sqrt(row[k] as number)) as [number, number, number],
    residuals,
    residualSquares,
    degrees,
    residualSd: Math.sqrt(residualSquares / degrees),
  });
}
