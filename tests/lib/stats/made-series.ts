import type { NoiseCell, NoiseModel } from "@/lib/stats/noise-model";
import type { ReplicateGroup, Series } from "@/lib/stats/series";

/** A series of groups a week apart, each error its own, to be altered by a spread. */
export function madeSeries(values: readonly (readonly number[])[], sharedErrorSd = 0.5): Series {
  const groups: ReplicateGroup[] = values.map((group, i) => ({
    day: 7 * i,
    values: group,
    sharedErrorSd,
    sharedErrorLabel: null,
    offsetLabel: null,
    used: true,
  }));
  return { groups, readingErrorSd: 1, offsetSd: 1.5, start: null };
}

/** A learned model of the given cells; weights default to even. */
export function madeNoise(cells: readonly Partial<NoiseCell>[], replicateSd: number | null = null): NoiseModel {
  const full = cells.map((cell) => ({ daySd: 1.5, correlation: 0, weight: 1 / cells.length, ...cell }));
  return { id: "made", kind: "learned", cells: full, replicateSd, priorChange: 0.2, learnedFrom: 10 };
}

/** A small grid around the noise that `simulatedSeries` makes. */
export const SMALL_GRID = madeNoise(
  [0.4, 1, 1.5, 2.2].flatMap((daySd) => [0, 0.3].map((correlation) => ({ daySd, correlation }))),
  3,
);

/** Uniform numbers in (0, 1) from a seed: Mulberry32. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (((mixed ^ (mixed >>> 14)) >>> 0) + 0.5) / 2 ** 32;
  };
}

/** A standard normal number (Box & Muller). */
export function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
}

export interface Made {
  readonly groups: number;
  readonly daySd?: number;
  readonly correlation?: number;
  readonly replicateSd?: number;
  readonly replicates?: number;
  readonly sharedErrorSd?: number;
  /** True level of each group, by position. */
  readonly level?: (group: number) => number;
}

/** A series from the engine's own model: correlated days, shared errors, replicates. */
export function simulatedSeries(made: Made, random: () => number): Series {
  const { daySd = 1.5, correlation = 0, replicateSd = 3, replicates = 5, sharedErrorSd = 1 } = made;
  let day = daySd * normal(random);
  const values: number[][] = [];
  for (let i = 0; i < made.groups; i++) {
    if (i > 0) day = correlation * day + Math.sqrt(1 - correlation ** 2) * daySd * normal(random);
    const centre = (made.level?.(i) ?? 0) + day + sharedErrorSd * normal(random);
    values.push(Array.from({ length: replicates }, () => centre + replicateSd * normal(random)));
  }
  return madeSeries(values, sharedErrorSd);
}

/** The series with every value, known sd and belief multiplied and then the values shifted. */
export function transformed(series: Series, factor: number, shift: number): Series {
  const size = Math.abs(factor);
  return {
    groups: series.groups.map((group) => ({
      ...group,
      values: group.values.map((value) => value * factor + shift),
      sharedErrorSd: group.sharedErrorSd * size,
    })),
    readingErrorSd: series.readingErrorSd * size,
    offsetSd: series.offsetSd * size,
    start: series.start === null ? null : { mean: series.start.mean * factor + shift, sd: series.start.sd * size },
  };
}

/** The noise model in the unit that `transformed` moves to. */
export function scaledNoise(noise: NoiseModel, factor: number): NoiseModel {
  return {
    ...noise,
    cells: noise.cells.map((cell) => ({ ...cell, daySd: cell.daySd * factor })),
    replicateSd: noise.replicateSd === null ? null : noise.replicateSd * factor,
  };
}

/** Largest relative distance of two lists, measured against the larger entry or 1. */
export function farthest(actual: ArrayLike<number>, expected: ArrayLike<number>): number {
  let most = actual.length === expected.length ? 0 : Number.POSITIVE_INFINITY;
  for (let i = 0; i < actual.length; i++) {
    const a = actual[i] as number;
    const b = expected[i] as number;
    most = Math.max(most, Math.abs(a - b) / Math.max(1, Math.abs(a), Math.abs(b)));
  }
  return most;
}
