/** First and last start (both included) of a family of shapes that may be claimed among `count` used groups. */
export interface ShapeRange {
  readonly first: number;
  readonly last: number;
}

/** A lasting step leaves at least two groups on either side: starts 2 to n-2, the first group of the new level. */
export function stepRange(count: number): ShapeRange {
  return { first: 2, last: count - 2 };
}

/** A lasting ramp: starts 0 to n-3, the last group of the old level; it ends at the last group. */
export function rampRange(count: number): ShapeRange {
  return { first: 0, last: count - 3 };
}

/** One odd group that tells nothing lasting: any of the groups. */
export function oddRange(count: number): ShapeRange {
  return { first: 0, last: count - 1 };
}

/** Column of a step of size 1 at group `start`: 0 before, 1 from it on; `count` entries. */
export function stepColumn(count: number, start: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => (i >= start ? 1 : 0));
}

/** Column of a ramp of size 1: 0 up to group `start`, then evenly up to 1 at the last of `count` groups. */
export function rampColumn(count: number, start: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => Math.max(0, i - start) / (count - 1 - start));
}

/** Column of one odd group: 1 at `at`, else 0; `count` entries. */
export function oddColumn(count: number, at: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => (i === at ? 1 : 0));
}
