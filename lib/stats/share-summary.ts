import type { ShareInterval } from "./wilson-interval";

/** Mean and intervals of a belief about a share; 95: of 100. */
export interface ShareSummary {
  readonly mean: number;
  /** As much belief below as above. */
  readonly equalTail80: ShareInterval;
  readonly equalTail95: ShareInterval;
  /** The shortest; reaches 0 or 1 when belief is highest there. */
  readonly shortest80: ShareInterval;
  readonly shortest95: ShareInterval;
}

/** Starts tried for the shortest interval, and rounds of the search between the best one's neighbours. */
const STARTS = 100;
const ROUNDS = 40;

/**
 * Mean and intervals of belief about a share, given on cells even in the angle t of share = (1 - cos t) / 2.
 *
 * `weights`: belief at the cells' middles, ascending in the share, 0 or more, not all 0; they needn't sum to 1. Ends lie
 * between cells by a density that is straight within a cell. Bad input: a weight below 0 or NaN, or none above 0, throws
 * a RangeError.
 *
 * Source: intervals after Box, G.E.P. & Tiao, G.C. (1973), Bayesian Inference in Statistical Analysis, 2.8; masses from
 * middles by the second difference over 24.
 */
export function shareSummary(weights: ArrayLike<number>): ShareSummary {
  const count = weights.length;
  const raw = (j: number): number => {
    if (j < 0) return -(weights[0] as number);
    return j < count ? (weights[j] as number) : -(weights[count - 1] as number);
  };
  const cells = Array.from({ length: count }, (_, j) => {
    if (!(raw(j) >= 0)) throw new RangeError(`weights[${j}] must be 0 or more, got ${raw(j)}`);
    return Math.max(0, raw(j) + (raw(j - 1) - 2 * raw(j) + raw(j + 1)) / 24);
  });
  const below = [0];
  for (const cell of cells) below.push((below.at(-1) as number) + cell);
  const total = below[count] as number;
  if (!(total > 0)) throw new RangeError(`a belief needs weight: ${total}`);
  const shareAt = (cellsIn: number): number => Math.sin((cellsIn * Math.PI) / (2 * count)) ** 2;
  const quantile = (p: number): number => {
    const wanted = Math.min(1, Math.max(0, p)) * total;
    let low = 0;
    let high = count - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((below[middle + 1] as number) >= wanted) high = middle;
      else low = middle + 1;
    }
    const cell = cells[low] as number;
    const part = cell > 0 ? (wanted - (below[low] as number)) / cell : 0;
    const lean = Math.max(-1, Math.min(1, (raw(low + 1) - raw(low - 1)) / (4 * cell || 1)));
    // part = u + lean (u^2 - u), for u from 0 to 1 across the cell.
    const root = Math.sqrt((1 - lean) ** 2 + 4 * lean * part);
    return shareAt(low + (2 * part) / (1 - lean + root || 1));
  };
  const equalTail = (share: number): ShareInterval => ({
    low: quantile((1 - share) / 2),
    high: quantile((1 + share) / 2),
  });
  const shortest = (share: number): ShareInterval => {
    const rest = 1 - share;
    const width = (start: number): number => quantile(start + share) - quantile(start);
    let best = 0;
    for (let i = 1; i <= STARTS; i++) if (width((i / STARTS) * rest) < width((best / STARTS) * rest)) best = i;
    let from = (Math.max(0, best - 1) / STARTS) * rest;
    let to = (Math.min(STARTS, best + 1) / STARTS) * rest;
    for (let round = 0; round < ROUNDS; round++) {
      const third = (to - from) / 3;
      if (width(from + third) < width(to - third)) to -= third;
      else from += third;
    }
    const start = best === 0 && width(0) <= width(from) ? 0 : best === STARTS && width(rest) <= width(to) ? rest : from;
    return { low: quantile(start), high: quantile(start + share) };
  };
  const mean = cells.reduce((sum, cell, j) => sum + cell * shareAt(j + 0.5), 0) / total;
  return {
    mean,
    equalTail80: equalTail(0.8),
    equalTail95: equalTail(0.95),
    shortest80: shortest(0.8),
    shortest95: shortest(0.95),
  };
}
