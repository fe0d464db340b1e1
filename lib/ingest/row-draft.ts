import type { ClubGroup } from "@/lib/domain/club-group";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Hand, SignRule } from "@/lib/domain/handedness";
import type { Circumstance } from "@/lib/domain/session";
import type { Field } from "./column-word";
import type { ImportLog } from "./import-log";
import type { ImportInput } from "./import-preview";
import type { FileUnit } from "./parse-unit";
import type { ParsedValue } from "./parse-value";
import type { ReadColumn } from "./read-columns";

/** How a row or a value stands while a file is being settled. Every step away from `alive` is told to the log. */
export type DraftState = "alive" | "waiting" | "refused" | "left-out";

/** One value of a row, on its way to a reading. */
export interface ReadingDraft {
  readonly row: RowDraft;
  readonly fundamental: Fundamental;
  readonly column: ReadColumn;
  readonly typed: string;
  readonly parsed: ParsedValue;
  /** Unit that the cell, row or header names; null: none does. */
  readonly unit: FileUnit | null;
  /** Null: not measurable. */
  value: number | null;
  signRule: SignRule;
  state: DraftState;
}

/** One row of a file, on its way to a session. */
export interface RowDraft {
  readonly row: number;
  readonly cells: readonly string[];
  state: DraftState;
  /** As the file has it; empty: none. */
  readonly aliasText: string;
  /** As the academy has it, once settled. */
  alias: string;
  hand: Hand | null;
  readonly handInFile: Hand | null;
  readonly birthYearInFile: number | null;
  day: string;
  readonly sequence: number | null;
  readonly swing: number | null;
  readonly club: string | null;
  readonly clubGroupText: string | null;
  clubGroup: ClubGroup | null;
  readonly circumstanceText: string | null;
  circumstance: Circumstance | null;
  readonly reader: string | null;
  readonly aid: string | null;
  readonly stanceWidthCm: number | null;
  readonly daysSincePractice: number | null;
  readonly solid: number | null;
  readonly balls: number | null;
  readonly setAsideReason: string | null;
  readonly placementText: string | null;
  readonly film: string | null;
  readonly note: string | null;
  readonly signInFile: SignRule | null;
  readonly cameraSds: { readonly fundamental: Fundamental; readonly sd: number }[];
  /** A camera sd in a column that names no fundamental. */
  readonly bareCameraSd: number | null;
  readings: readonly ReadingDraft[];
}

/** What every step of settling a file needs. */
export interface ImportContext {
  readonly input: ImportInput;
  readonly form: "long" | "wide";
  readonly columns: readonly ReadColumn[];
  readonly log: ImportLog;
}

/** The column of a field; undefined: the file has none. */
export function columnOf(context: ImportContext, field: Field): ReadColumn | undefined {
  return context.columns.find((column) => column.field === field);
}

/** Whether a row may still be saved, now or after an answer. */
export function isOpen(row: RowDraft): boolean {
  return row.state === "alive" || row.state === "waiting";
}

/** Takes rows out that are still in; what is out for another reason stays so. */
export function setBack(rows: readonly RowDraft[], state: "waiting" | "left-out"): void {
  for (const row of rows) if (row.state === "alive") row.state = state;
}

/** Things that share a key, in the order of their first. */
export function groupBy<T>(items: readonly T[], keyOf: (item: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}
