/** Places and weights of a rule for integrals; both ascend with the places. */
export interface QuadratureRule {
  readonly places: readonly number[];
  readonly weights: readonly number[];
}

/** Newton's method doubles its digits each round; from the start used, five reach a double. */
const ROUNDS = 10;

/**
 * Gauss's rule with `count` places for an integral from `from` to `to`.
 *
 * `count`: whole, 1 or more; `from`, `to`: finite, in one unit. Result: places in that unit, ascending, none at the ends, and
 * weights in that unit; the sum of weight times function is exact for a polynomial of degree 2 count - 1. Bad input
 * throws a RangeError.
 *
 * Source: Davis, P.J. & Rabinowitz, P. (1984), Methods of Numerical Integration, 2.7; roots of Legendre's polynomial by
 * Newton's method from Tricomi's start.
 */
export function gaussLegendre(count: number, from: number, to: number): QuadratureRule {
  if (!Number.isInteger(count) || count < 1) throw new RangeError(`count must be whole, 1 or more, got ${count}`);
  if (!Number.isFinite(from) || !Number.isFinite(to)) throw new RangeError(`ends must be finite, got ${from}, ${to}`);
  const middle = (from + to) / 2;
  const half = (to - from) / 2;
  const places = new Array<number>(count).fill(middle);
  const weights = new Array<number>(count).fill(0);
  for (let i = 0; 2 * i < count; i++) {
    let root = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    for (let round = 0; round < ROUNDS; round++) {
      const { value, slope } = legendre(count, root);
      root -= value / slope;
    }
    const { slope } = legendre(count, root);
    const weight = (2 * half) / ((1 - root * root) * slope * slope);
    const mirror = count - 1 - i;
    places[i] = middle - half * root;
    places[mirror] = middle + half * root;
    weights[i] = weight;
    weights[mirror] = weight;
  }
  return { places, weights };
}

/** Legendre's polynomial of a degree and its slope, by the three-term recurrence. */
function legendre(degree: number, x: number): { value: number; slope: number } {
  let before = 1;
  let value = x;
  for (let k = 2; k <= degree; k++) {
    const next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
    before = value;
    value = next;
  }
  return { value, slope: (degree * (x * value - before)) / (x * x - 1) };
}
