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
}

/** Room for the sums of `count` used groups, to be filled cell by cell. */
export function emptyCellSums(count: number): CellSums {
  const shape = (): ShapeSums => ({
    xx: new Float64Array(count),
    x1: new Float64Array(count),
    xy: new Float64Array(count),
  });
  return { logDeterminant: 0, oneOne: 0, oneY: 0, yy: 0, step: shape(), ramp: shape(), odd: shape() };
}
