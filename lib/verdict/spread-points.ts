import { normalQuantile } from "@/lib/stats/normal-distribution";

/** The positive root of x^(d+1) = x + 1, whose powers spread points evenly over d dimensions. */
function root(dimensions: number): number {
  let x = 2;
  for (let round = 0; round < 60; round++) x = (1 + x) ** (1 / (dimensions + 1));
  return x;
}

/**
 * Points spread evenly over a space of independent standard normal numbers; the same ones at every call.
 *
 * Coordinates follow an additive recurrence, so points in neighbouring places differ in all of them.
 *
 * @returns `count` points of `dimensions` coordinates
 *
 * Source: Weyl 1916 on equidistribution; powers of the generalised golden ratio as steps.
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
  const step = root(dimensions);
  return Array.from({ length: count }, (_, n) =>
    Float64Array.from({ length: dimensions }, (_, d) => {
      const place = (0.5 + (n + 1) / step ** (d + 1)) % 1;
      return normalQuantile(Math.min(1 - 1e-6, Math.max(1e-6, place)));
    }),
  );
}
