import type { StudentScope } from "@/lib/domain/scope";
import type { EnteredSwing } from "@/lib/domain/session-entry";
import { type Database, inTransaction } from "../client";
import {
  type EnteredCounts,
  type EnteringReader,
  enterSwings,
  prepareSessionStatements,
  type RowOrigin,
} from "./sessions";
import { updateRevision } from "./students";

/** Swings read in a session that is on file. */
export interface AddedReadings {
  readonly sessionId: string;
  /** Null: the session's own reader. */
  readonly reader: string | null;
  /** `first`: adds what is missing; `again`: a blind re-read beside the earlier ones. */
  readonly reading: "first" | "again";
  readonly swings: readonly EnteredSwing[];
}

export type ReadingsInsert =
  | ({ readonly kind: "inserted" } & EnteredCounts)
  | { readonly kind: "unknown-session"; readonly sessionId: string };

/** A change of one reading, with who and why. */
export interface EnteredCorrection {
  readonly readingId: number;
  /** Null: not measurable after all. */
  readonly value: number | null;
  readonly typed: string;
  readonly who: string;
  readonly why: string;
  readonly now: string;
}

export type CorrectionInsert =
  | { readonly kind: "inserted"; readonly correctionId: number }
  | { readonly kind: "unknown-reading"; readonly readingId: number };

function nextReread(db: Database, { sessionId, reader }: Omit<EnteringReader, "reread">): number {
  const last = db.sqlite
    .prepare<[string, string], number | null>(
      `SELECT max(reread) FROM swing JOIN reading ON reading.swing_id = swing.id
       WHERE swing.session_id = ? AND reading.reader = ?`,
    )
    .pluck()
    .get(sessionId, reader);
  return (last ?? -1) + 1;
}

export function insertReadings(
  db: Database,
  scope: StudentScope,
  added: AddedReadings,
  origin: RowOrigin,
): ReadingsInsert {
  return inTransaction(db, () => {
    const { sessionId } = added;
    const ownReader = db.sqlite
      .prepare<[string, string], string>("SELECT reader FROM session WHERE id = ? AND student_id = ?")
      .pluck()
      .get(sessionId, scope.studentId);
    if (ownReader === undefined) return { kind: "unknown-session", sessionId };
    const who = { studentId: scope.studentId, sessionId, reader: added.reader ?? ownReader };
    const entering = { ...who, reread: added.reading === "first" ? 0 : nextReread(db, who) };
    const counts = enterSwings(prepareSessionStatements(db, scope), entering, added.swings, origin);
    if (counts.swings + counts.readings > 0) updateRevision(db, scope);
    return { kind: "inserted", ...counts };
  });
}

/** Adds a row; the reading stays as entered. */
export function insertCorrection(db: Database, scope: StudentScope, entered: EnteredCorrection): CorrectionInsert {
  return inTransaction(db, () => {
    const { changes, lastInsertRowid } = db.sqlite
      .prepare<[EnteredCorrection & { studentId: string }]>(
        `INSERT INTO correction (reading_id, value, typed, who, why, corrected_at)
         SELECT id, :value, :typed, :who, :why, :now FROM reading WHERE id = :readingId AND student_id = :studentId`,
      )
      .run({ ...entered, studentId: scope.studentId });
    if (changes === 0) return { kind: "unknown-reading", readingId: entered.readingId };
    updateRevision(db, scope);
    return { kind: "inserted", correctionId: Number(lastInsertRowid) };
  });
}
