import { normalQuantile } from "@/lib/stats/normal-distribution";

/** Mixes the bits of a whole number so that neighbours come out far apart (Appleby's finaliser, public domain). */
function mixed(number: number): number {
  let bits = Math.imul(number ^ (number >>> 16), 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
  return (bits ^ (bits >>> 16)) >>> 0;
}

/** The order in which one coordinate takes its places: one of all orders, as good as unrelated to the others'. */
function orderOf(count: number, dimension: number): readonly number[] {
  const keys = Array.from({ length: count }, (_, n) => mixed(mixed(dimension + 1) + n));
  return keys.map((_, n) => n).sort((a, b) => (keys[a] as number) - (keys[b] as number));
}

/**
 * Points spread evenly over a space of independent standard normal numbers; the same ones at every call.
 *
 * A Latin hypercube: each coordinate takes the middles of `count` equally likely stretches, each once, in an order of
 * its own, so that even few points have every coordinate's spread and no trend from one coordinate to the next.
 *
 * @returns `count` points of `dimensions` coordinates
 *
 * Source: McKay, Beckman and Conover 1979, Technometrics 21.
 */
export function spreadPoints(count: number, dimensions: number): readonly Float64Array[] {
  const key = `${count}/${dimensions}`;
  const before = laid.get(key);
  if (before !== undefined) return before;
  const points = layPoints(count, dimensions);
  laid.set(key, points);
  return points;
}

const laid = new Map<string, readonly Float64Array[]>();

function layPoints(count: number, dimensions: number): readonly Float64Array[] {
  const points = Array.from({ length: count }, () => new Float64Array(dimensions));
  for (let d = 0; d < dimensions; d++) {
    const order = orderOf(count, d);
    points.forEach((point, n) => {
      point[d] = normalQuantile(((order[n] as number) + 0.5) / count);
    });
  }
  return points;
}
