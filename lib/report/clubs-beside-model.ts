import type { TableModel } from "./basic-model";

/** A level against its goal band as it is drawn. */
export interface DrawnInterval {
  readonly from: number;
  readonly to: number;
  readonly bandLow: number | null;
  readonly bandHigh: number | null;
  readonly low: number;
  readonly value: number;
  readonly high: number;
  readonly sentence: string;
}

/** One fundamental with each club group, side by side. */
export interface ClubsBesidePart {
  readonly margin: string;
  readonly explains: string;
  readonly heading: string;
  readonly table: TableModel;
  readonly drawnLabel: string;
  /** One a row; null: no level yet. */
  readonly drawn: readonly (DrawnInterval | null)[];
}
