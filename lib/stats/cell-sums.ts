/** Inner products of whitened columns for one family of shapes; entry k belongs to the shape that starts at used group k. */
export interface ShapeSums {
  /** Shape with itself. */
  readonly xx: Float64Array;
  /** Shape with the column of ones. */
  readonly x1: Float64Array;
  /** Shape with the values. */
  readonly xy: Float64Array;
}

/**
 * All that one nuisance cell has to say about one look: inner products x' C^-1 z of the columns.
 *
 * `step` k is 1 from group k on, `ramp` k climbs from 0 at group k to 1 at the last group (entry n-1 is
 * meaningless and 0), `odd` k is 1 at group k alone. A starting belief is already in `oneOne`, `oneY`, `yy`.
 */
export interface CellSums {
  logDeterminant: number;
  oneOne: number;
  oneY: number;
  yy: number;
  readonly step: ShapeSums;
  readonly ramp: ShapeSums;
  readonly odd: ShapeSums;
  /** Room for the filters' forward pass, one entry a group: inverse variance, gains of the states, and the two innovations. */
  readonly filter: {
    readonly inverse: Float64Array;
    readonly gain: Float64Array;
    readonly gainError: Float64Array;
    readonly innovationY: Float64Array;
    readonly innovation1: Float64Array;
  };
}

/** Room for the sums of `count` used groups, to be filled cell by cell. */
export function emptyCellSums(count: number): CellSums {
  const room = (): Float64Array => new Float64Array(count);
  const shape = (): ShapeSums => ({ xx: room(), x1: room(), xy: room() });
  const filter = { inverse: room(), gain: room(), gainError: room(), innovationY: room(), innovation1: room() };
  return { logDeterminant: 0, oneOne: 0, oneY: 0, yy: 0, step: shape(), ramp: shape(), odd: shape(), filter };
}

/** Sums of the columns that every shape shares. */
export type LevelSums = Pick<CellSums, "logDeterminant" | "oneOne" | "oneY" | "yy">;

/**
 * Fills the sums that every shape shares, a belief about the level before the first group added as one more value.
 *
 * `start`: mean and variance of that belief, in the unit of the values and its square; null: none.
 */
export function fillLevelSums(
  sums: LevelSums,
  start: { readonly mean: number; readonly variance: number } | null,
  found: LevelSums,
): void {
  sums.logDeterminant = found.logDeterminant + (start === null ? 0 : Math.log(start.variance));
  sums.oneOne = found.oneOne + (start === null ? 0 : 1 / start.variance);
  sums.oneY = found.oneY + (start === null ? 0 : start.mean / start.variance);
  sums.yy = found.yy + (start === null ? 0 : (start.mean * start.mean) / start.variance);
}
