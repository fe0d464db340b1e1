import { normalCdf, normalUpperTail } from "./normal-distribution";
import { requireFinite } from "./require-finite";

/** Points of the grid on which what goes on is integrated; odd, for Simpson's rule. Six digits at five looks. */
const POINTS = 161;

/** Standard deviations beyond the drift at which a look without a bound is cut off: less than 1e-14 lies outside. */
const FAR = 8;

interface Grid {
  readonly at: Float64Array;
  /** Density of the sum times the weight of Simpson's rule. */
  readonly mass: Float64Array;
}

function gridOf(edges: readonly [number, number], density: (sum: number) => number): Grid {
  const [low, high] = edges;
  const step = (high - low) / (POINTS - 1);
  const at = Float64Array.from({ length: POINTS }, (_, i) => low + i * step);
  const mass = at.map((sum, i) => {
    const weight = i === 0 || i === POINTS - 1 ? 1 : i % 2 === 1 ? 4 : 2;
    return (density(sum) * weight * step) / 3;
  });
  return { at, mass };
}

const bell = (z: number): number => Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);

/**
 * Chance that a test that is looked at several times first passes its bound at each of its looks.
 *
 * `fractions`: share of the information at each look, rising, from above 0. `bounds`: as many, on the scale of a standard normal
 * number, each above 0; infinity: nothing is asked at that look. `drift`: mean of the standardised difference when all the
 * information is in (0: no difference). Result, as long as they: chance of passing `+bound` and `-bound` at that look with no
 * bound passed before; to about 1e-6. Bad input: lists of unequal length or empty, fractions that don't rise, a bound of 0 or
 * below, and NaN throw a RangeError. Assumes normal differences with independent steps: sums of independent values.
 *
 * Source: Armitage, P., McPherson, C.K. & Rowe, B.C. (1969), Journal of the Royal Statistical Society A 132, 235-244: recursive
 * integration, here by Simpson's rule.
 */
export function crossingChances(
  fractions: readonly number[],
  bounds: readonly number[],
  drift: number,
): { readonly up: number; readonly down: number }[] {
  requireFinite(fractions, "fractions");
  requireFinite([drift], "drift");
  if (fractions.length === 0 || fractions.length !== bounds.length)
    throw new RangeError(`needs a bound for each look, got ${fractions.length} and ${bounds.length}`);
  let before = 0;
  let grid: Grid | null = null;
  return fractions.map((fraction, look) => {
    const bound = bounds[look] as number;
    if (!(fraction > before)) throw new RangeError(`fractions must rise from 0, got ${fraction} after ${before}`);
    if (!(bound > 0)) throw new RangeError(`a bound must be above 0, got ${bound}`);
    const sd = Math.sqrt(fraction - before);
    const shift = drift * (fraction - before);
    const edge = bound * Math.sqrt(fraction);
    const last: Grid = grid ?? { at: new Float64Array(1), mass: new Float64Array([1]) };
    const sumOver = (of: (from: number) => number): number =>
      last.at.reduce((sum, from, i) => sum + (last.mass[i] as number) * of(from), 0);
    const chances = {
      up: sumOver((from) => normalUpperTail((edge - from - shift) / sd)),
      down: sumOver((from) => normalCdf((-edge - from - shift) / sd)),
    };
    const [mean, far] = [drift * fraction, FAR * Math.sqrt(fraction)];
    const edges = [Math.max(-edge, mean - far), Math.min(edge, mean + far)] as const;
    grid = gridOf(edges, (sum) => sumOver((from) => bell((sum - from - shift) / sd) / sd));
    before = fraction;
    return chances;
  });
}
