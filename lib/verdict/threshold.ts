/** One threshold: its value, what it is counted in, why it has this value, and who says so. */
export interface Threshold {
  readonly value: number;
  readonly unit: string;
  readonly reason: string;
  readonly source: string;
  /** Least and largest value that an override may set. */
  readonly bounds: readonly [number, number];
}
