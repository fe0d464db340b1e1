/** Kinds of a change of the record above single readings. */
export const CHANGE_KINDS = ["session-facts", "move-session", "split-session", "merge-students"] as const;

/** Kind of a change of the record above single readings. */
export type ChangeKind = (typeof CHANGE_KINDS)[number];

/** A value as it lies in a column. */
export type ColumnValue = string | number | null;

/** One row by its table and key, with the columns that a change is about; null: there is no such row. */
export interface RowState {
  readonly table: string;
  readonly key: Readonly<Record<string, string | number>>;
  readonly values: Readonly<Record<string, ColumnValue>> | null;
}

/** How far the record had grown when a change was made: the last numbers given to rows. */
export interface RecordMark {
  readonly reading: number;
  readonly correction: number;
}

/** How it was, and how it became: the same rows in the same order. */
export interface ChangedRows {
  readonly before: readonly RowState[];
  readonly after: readonly RowState[];
  readonly mark: RecordMark;
}

/** A change on file. */
export interface RecordChange extends ChangedRows {
  readonly id: number;
  readonly kind: ChangeKind;
  /** Whose record it was. */
  readonly studentId: string;
  /** Whose it became; null: the same student's. */
  readonly otherStudentId: string | null;
  /** Null: about a student. */
  readonly sessionId: string | null;
  readonly who: string;
  readonly why: string;
  /** ISO instants. */
  readonly changedAt: string;
  readonly undoneAt: string | null;
  readonly undoneBy: string | null;
}

/** A name for a row: equal for the same row of the same table. */
export function rowName({ table, key }: Pick<RowState, "table" | "key">): string {
  const parts = Object.keys(key)
    .sort()
    .map((name) => `${name}=${key[name]}`);
  return `${table} ${parts.join(" ")}`;
}
