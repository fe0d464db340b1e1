import type { FundamentalId, Unit } from "@/lib/domain/fundamental";
import type { StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { updateRevision } from "./students";

/** A read-back that is ready to be kept; its items in the order of reading. */
export interface NewReadBack {
  readonly id: string;
  readonly fundamentalId: FundamentalId;
  readonly reader: string;
  readonly who: string;
  readonly drawnAt: string;
  readonly items: readonly { readonly swingId: number; readonly filmReference: string }[];
}

/** One value to enter at the end of a read-back. */
export interface ReadBackValue {
  readonly place: number;
  /** Handedness-neutral; null: not measurable. */
  readonly value: number | null;
  readonly typed: string;
  readonly unit: Unit;
}

/** @throws Error on a swing that isn't the student's; nothing is written */
export function insertReadBack(db: Database, scope: StudentScope, drawn: NewReadBack): void {
  const { items, ...row } = drawn;
  const { studentId } = scope;
  inTransaction(db, () => {
    db.sqlite
      .prepare<[Omit<NewReadBack, "items"> & { studentId: string }]>(
        `INSERT INTO read_back (id, student_id, fundamental_id, reader, who, drawn_at)
         VALUES (:id, :studentId, :fundamentalId, :reader, :who, :drawnAt)`,
      )
      .run({ ...row, studentId });
    const insert = db.sqlite.prepare<[Record<string, unknown>]>(
      `INSERT INTO read_back_item (read_back_id, place, swing_id, film_reference)
       SELECT :id, :place, swing.id, :filmReference FROM swing JOIN session ON session.id = swing.session_id
       WHERE swing.id = :swingId AND session.student_id = :studentId`,
    );
    items.forEach((item, at) => {
      const { changes } = insert.run({ ...item, id: row.id, place: at + 1, studentId });
      if (changes !== 1) throw new Error(`no such swing of this student: ${item.swingId}`);
    });
  });
}

/** Keeps what was typed into an open read-back; null empties a place again. It is in no record yet. */
export function updateReadBackTyped(
  db: Database,
  scope: StudentScope,
  readBackId: string,
  values: readonly { readonly place: number; readonly typed: string | null }[],
): number {
  const keep = db.sqlite.prepare<[Record<string, unknown>]>(
    `UPDATE read_back_item SET typed = :typed
     WHERE read_back_id = :readBackId AND place = :place AND typed IS NOT :typed AND EXISTS (
       SELECT 1 FROM read_back
       WHERE id = :readBackId AND student_id = :studentId AND finished_at IS NULL AND dropped_at IS NULL)`,
  );
  const { studentId } = scope;
  return inTransaction(db, () =>
    values.reduce((sum, { place, typed }) => sum + keep.run({ place, typed, readBackId, studentId }).changes, 0),
  );
}

/** What came of ending a read-back: `passed`: read directly meanwhile, so that what is on file stands. */
export type ReadBackEnd =
  | { readonly kind: "finished"; readonly entered: number; readonly passed: number }
  /** Nothing was typed: there is nothing to end. */
  | { readonly kind: "empty" }
  | { readonly kind: "not-open" };

/**
 * Ends a read-back: everything typed enters the record at once, with the day of its swing and the hour of reading, or nothing
 * does. What was never typed stays unread.
 */
export function updateReadBackFinished(
  db: Database,
  scope: StudentScope,
  readBackId: string,
  { now, values }: { readonly now: string; readonly values: readonly ReadBackValue[] },
): ReadBackEnd {
  const { studentId } = scope;
  if (values.length === 0) return { kind: "empty" };
  return inTransaction(db, () => {
    const { changes } = db.sqlite
      .prepare<[string, string, string]>(
        `UPDATE read_back SET finished_at = ?
         WHERE id = ? AND student_id = ? AND finished_at IS NULL AND dropped_at IS NULL`,
      )
      .run(now, readBackId, studentId);
    if (changes === 0) return { kind: "not-open" };
    const enter = db.sqlite.prepare<[Record<string, unknown>]>(
      `INSERT INTO reading (student_id, fundamental_id, session_id, swing_id, reader, reread, value, typed, unit,
         sign_rule, entered_at)
       SELECT session.student_id, read_back.fundamental_id, session.id, swing.id, read_back.reader, 0, :value, :typed,
         :unit, 'neutral', :now
       FROM read_back_item JOIN read_back ON read_back.id = read_back_item.read_back_id
         JOIN swing ON swing.id = read_back_item.swing_id JOIN session ON session.id = swing.session_id
       WHERE read_back.id = :readBackId AND place = :place AND session.student_id = :studentId
       ON CONFLICT DO NOTHING`,
    );
    const link = db.sqlite.prepare<[number | bigint, string, number]>(
      "UPDATE read_back_item SET reading_id = ? WHERE read_back_id = ? AND place = ?",
    );
    let entered = 0;
    for (const value of values) {
      const made = enter.run({ ...value, readBackId, studentId, now });
      if (made.changes === 1) entered += link.run(made.lastInsertRowid, readBackId, value.place).changes;
    }
    updateRevision(db, scope);
    return { kind: "finished", entered, passed: values.length - entered };
  });
}

/** Gives an open read-back up: nothing of it enters the record, and its films are free again. */
export function updateReadBackDropped(
  db: Database,
  scope: StudentScope,
  readBackId: string,
  now: string,
): { readonly kind: "dropped" | "not-open" } {
  const { changes } = db.sqlite
    .prepare<[string, string, string]>(
      `UPDATE read_back SET dropped_at = ?
       WHERE id = ? AND student_id = ? AND finished_at IS NULL AND dropped_at IS NULL`,
    )
    .run(now, readBackId, scope.studentId);
  return { kind: changes === 1 ? "dropped" : "not-open" };
}
