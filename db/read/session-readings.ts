import type { FundamentalId } from "@/lib/domain/fundamental";
import type { SignRule } from "@/lib/domain/handedness";
import type { StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";

/** A first reading of the session's reader, whether it counts or was taken out, with the latest correction's number. */
export interface SessionReading {
  readonly id: number;
  readonly swing: number;
  readonly fundamentalId: FundamentalId;
  /** In force; null: not measurable, or taken out. */
  readonly value: number | null;
  readonly typed: string;
  readonly signRule: SignRule;
  readonly state: "counts" | "void";
  /** 0: never corrected. */
  readonly correctionId: number;
}

/** Every first reading of one session, by swing and fundamental; none for a session of another student. */
export function readSessionReadings(db: Database, scope: StudentScope, sessionId: string): SessionReading[] {
  return db.sqlite
    .prepare<[string, string], SessionReading>(
      `SELECT reading.id, swing.number AS swing, reading.fundamental_id AS fundamentalId,
         iif(correction.id IS NULL, reading.value, correction.value) AS value,
         iif(correction.id IS NULL, reading.typed, correction.typed) AS typed, reading.sign_rule AS signRule,
         iif(correction.kind = 'void', 'void', 'counts') AS state, coalesce(correction.id, 0) AS correctionId
       FROM session
         JOIN reading ON reading.session_id = session.id AND reading.reader = session.reader AND reading.reread = 0
         JOIN swing ON swing.id = reading.swing_id
         LEFT JOIN correction ON correction.id =
           (SELECT max(later.id) FROM correction AS later WHERE later.reading_id = reading.id)
       WHERE session.id = ? AND session.student_id = ?
       ORDER BY swing.number, reading.fundamental_id`,
    )
    .all(sessionId, scope.studentId);
}

/** Numbers of a session's swings in order. */
export function readSwingNumbers(db: Database, scope: StudentScope, sessionId: string): number[] {
  return db.sqlite
    .prepare<[string, string], number>(
      `SELECT swing.number FROM swing JOIN session ON session.id = swing.session_id
       WHERE session.id = ? AND session.student_id = ? ORDER BY swing.number`,
    )
    .pluck()
    .all(sessionId, scope.studentId);
}
