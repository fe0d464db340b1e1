import type { Edges } from "@/lib/domain/fundamental";
import type { Words } from "@/lib/words/catalogue";
import { sayNumber, saySigned } from "@/lib/words/number-words";
import { valueTicks } from "./axis";
import type { Tick } from "./chart-model";
import { valueRange } from "./value-range";

/** A level that is drawn, with the band that it is held against; both edges null: none. */
export interface DrawnLevel {
  readonly level: number;
  readonly goal: Edges;
}

/** Where levels come to lie on one axis. */
export interface SpreadAxis {
  /** `same`: one band for all, on an axis of levels. `own`: each at its distance from its own band. `none`: nobody has a band. */
  readonly kind: "same" | "own" | "none";
  /** The band on the axis; an edge that is null is open. */
  readonly band: Edges;
  readonly placeOf: (drawn: DrawnLevel) => number;
}

const TICKS = 6;

/** The middle one of some numbers, the upper of two; at least one. */
export function middleOf(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;
}

/** How far a level lies beyond its band: below 0 under the lower edge, above 0 over the upper one, 0 between them. */
export function beyondBand({ level, goal: { low, high } }: DrawnLevel): number {
  if (low !== null && level < low) return level - low;
  return high !== null && level > high ? level - high : 0;
}

/** Each at its distance from its own band; between two edges as far across the field as it lies across its band. */
function ownAxis(levels: readonly DrawnLevel[]): SpreadAxis {
  const widths = levels.flatMap(({ goal: { low, high } }) => (low === null || high === null ? [] : [high - low]));
  const isOpenBelow = levels.every(({ goal }) => goal.low === null);
  const isOpenAbove = levels.every(({ goal }) => goal.high === null);
  if (isOpenBelow)
    return { kind: "own", band: { low: null, high: 0 }, placeOf: ({ level, goal }) => level - (goal.high ?? 0) };
  if (isOpenAbove)
    return { kind: "own", band: { low: 0, high: null }, placeOf: ({ level, goal }) => level - (goal.low ?? 0) };
  // Bands that are open on one side only are drawn as wide as the others; so are they where there are no others.
  const width = widths.length === 0 ? 1 : middleOf(widths);
  const placeOf = (drawn: DrawnLevel): number => {
    const beyond = beyondBand(drawn);
    if (beyond !== 0) return beyond < 0 ? beyond : width + beyond;
    const { low, high } = drawn.goal;
    if (low !== null && high !== null) return high > low ? ((drawn.level - low) / (high - low)) * width : width / 2;
    return low === null ? Math.max(0, width + drawn.level - (high ?? 0)) : Math.min(width, drawn.level - low);
  };
  return { kind: "own", band: { low: 0, high: width }, placeOf };
}

/** The axis on which levels are drawn: of levels where their bands are one and the same, else of distances from each one's own. */
export function spreadAxis(levels: readonly DrawnLevel[]): SpreadAxis {
  const [first] = levels;
  const bands = new Set(levels.map(({ goal }) => `${goal.low} ${goal.high}`));
  if (first === undefined || bands.size > 1) return ownAxis(levels);
  const kind = first.goal.low === null && first.goal.high === null ? "none" : "same";
  return { kind, band: first.goal, placeOf: ({ level }) => level };
}

/** The stretch that is drawn, and its ticks: levels, or how far below and above the band. */
export function axisTicks(
  words: Words,
  { kind, band }: SpreadAxis,
  places: readonly number[],
): { readonly from: number; readonly to: number; readonly ticks: readonly Tick[] } {
  const edges = [band.low, band.high].flatMap((edge) => (edge === null ? [] : [edge]));
  const { low: from, high: to } = valueRange([...places, ...edges]);
  const levels = (low: number, high: number): readonly Tick[] =>
    valueTicks(low, high, TICKS, (value, decimals) => sayNumber(words, value, decimals));
  if (kind !== "own") return { from, to, ticks: levels(from, to) };
  const below = band.low === null ? 0 : band.low - from;
  const above = band.high === null ? 0 : to - band.high;
  const steps = valueTicks(0, Math.max(below, above), TICKS / 2, (_value, decimals) => String(decimals))
    .filter(({ at }) => at > 0)
    .map(({ at, label }) => ({ at, decimals: Number(label) }));
  const ticks = steps.flatMap(({ at, decimals }) => [
    ...(at <= below ? [{ at: (band.low ?? 0) - at, label: saySigned(words, -at, decimals) }] : []),
    ...(at <= above ? [{ at: (band.high ?? 0) + at, label: saySigned(words, at, decimals) }] : []),
  ]);
  return { from, to, ticks: ticks.toSorted((a, b) => a.at - b.at) };
}
