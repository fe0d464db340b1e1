import type { ReactNode } from "react";
import type { Arrangement, GridCell, GridColumn, GridModel } from "@/lib/report/grid-model";
import { typedNumber } from "./typed-number";

/** A column as the browser needs it: its drawing comes finished from the server. */
export type DeskColumn = Omit<GridColumn, "drawing">;

export type DeskModel = Omit<GridModel, "columns"> & { readonly columns: readonly DeskColumn[] };

/** Drawings by the id of their fundamental. */
export type Drawings = Readonly<Record<string, ReactNode>>;

/** What stands under a cell; null: nothing. */
export interface CellNote {
  readonly error: string;
  /** Whether its value is asked about: sign or digit? */
  readonly asked: "yes" | "no";
}

/** What is said of a cell as it stands: of the value that the server knows, what the server said. */
export function cellNote(cell: GridCell, column: DeskColumn, text: string): CellNote | null {
  if (text === cell.value) {
    if (cell.asked === "yes") return { error: "", asked: "yes" };
    return cell.error === "" ? null : { error: cell.error, asked: "no" };
  }
  const value = typedNumber(text);
  const { low, high } = column.plausible;
  return value !== null && (value < low || value > high) ? { error: "", asked: "yes" } : null;
}

/** The columns in the order of the screen: as the model has them, or by checkpoint within what matters now and within the rest. */
export function columnOrder(model: DeskModel, arrangement: Arrangement): readonly number[] {
  const all = model.columns.map((_, i) => i);
  if (arrangement === "swings") return all;
  const rank = (i: number): number => model.columns[i]?.checkpointOrder ?? 0;
  const byCheckpoint = (part: readonly number[]) => [...part].sort((a, b) => rank(a) - rank(b) || a - b);
  return [...byCheckpoint(all.slice(0, model.first)), ...byCheckpoint(all.slice(model.first))];
}
