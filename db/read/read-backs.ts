import type { FundamentalId, View } from "@/lib/domain/fundamental";
import type { ReadBack, ReadBackCandidate, ReadBackItem, ReadBackReading } from "@/lib/domain/read-back";
import type { StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";

/** Swings of the student that the session's reader hasn't read for a fundamental, by day and number. */
export function readReadBackCandidates(
  db: Database,
  scope: StudentScope,
  wish: { readonly fundamentalId: FundamentalId; readonly view: View },
): ReadBackCandidate[] {
  return db.sqlite
    .prepare<[typeof wish & { studentId: string }], ReadBackCandidate>(
      `SELECT session.id AS sessionId, session.day, session.reader, swing.id AS swingId, swing.number AS swing,
         iif(capture.session_id IS NULL, 'no', 'yes') AS filmed, capture.film_reference AS filmReference,
         iif(EXISTS (
           SELECT 1 FROM read_back_item JOIN read_back ON read_back.id = read_back_item.read_back_id
           WHERE read_back_item.swing_id = swing.id AND read_back.fundamental_id = :fundamentalId
             AND finished_at IS NULL AND dropped_at IS NULL), 'yes', 'no') AS waits
       FROM session JOIN swing ON swing.session_id = session.id
         LEFT JOIN capture ON capture.session_id = session.id AND capture.view = :view
       WHERE session.student_id = :studentId AND NOT EXISTS (
         SELECT 1 FROM reading WHERE reading.swing_id = swing.id AND reading.fundamental_id = :fundamentalId
           AND reading.reader = session.reader AND reading.reread = 0)
       ORDER BY session.day, session.sequence, session.id, swing.number`,
    )
    .all({ ...wish, studentId: scope.studentId });
}

/** Every read-back of the student, newest first. */
export function readReadBacks(db: Database, scope: StudentScope): ReadBack[] {
  return db.sqlite
    .prepare<[string], ReadBack>(
      `SELECT read_back.id, fundamental_id AS fundamentalId, reader, who, drawn_at AS drawnAt,
         finished_at AS finishedAt, dropped_at AS droppedAt, count(place) AS items, count(typed) AS typed,
         count(reading_id) AS entered
       FROM read_back LEFT JOIN read_back_item ON read_back_item.read_back_id = read_back.id
       WHERE student_id = ? GROUP BY read_back.id ORDER BY drawn_at DESC, read_back.id`,
    )
    .all(scope.studentId);
}

/** The items of a read-back in the order of reading, with nothing that tells when they were filmed or what was read. */
export function readReadBackItems(db: Database, scope: StudentScope, readBackId: string): ReadBackItem[] {
  return db.sqlite
    .prepare<[string, string], ReadBackItem>(
      `SELECT place, film_reference AS filmReference, swing.number AS swing, typed
       FROM read_back_item JOIN read_back ON read_back.id = read_back_item.read_back_id
         JOIN swing ON swing.id = read_back_item.swing_id
       WHERE read_back.student_id = ? AND read_back.id = ? ORDER BY place`,
    )
    .all(scope.studentId, readBackId);
}

/** Readings that came of read-backs, with the hour of reading; in the order of their sessions. */
export function readReadBackReadings(db: Database, scope: StudentScope): ReadBackReading[] {
  return db.sqlite
    .prepare<[string], ReadBackReading>(
      `SELECT reading.session_id AS sessionId, swing.number AS swing, reading.fundamental_id AS fundamentalId,
         reading.entered_at AS readAt
       FROM read_back_item JOIN reading ON reading.id = read_back_item.reading_id
         JOIN session ON session.id = reading.session_id AND session.reader = reading.reader
         JOIN swing ON swing.id = reading.swing_id
       WHERE reading.student_id = ? ORDER BY session.day, session.sequence, session.id, swing.number`,
    )
    .all(scope.studentId);
}
