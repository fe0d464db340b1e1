import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { seenBy, VISIBLE_SQL } from "./visible";

/** Readings that were added to a session later than it was entered, at one time. */
export interface AddedLater {
  readonly sessionId: string;
  readonly enteredAt: string;
  readonly readings: number;
}

/** Readings of this student that were added by hand to sessions on file, in the order of their entry. */
export function readAddedLater(db: Database, scope: StudentScope): AddedLater[] {
  return db.sqlite
    .prepare<[string], AddedLater>(
      `SELECT session.id AS sessionId, reading.entered_at AS enteredAt, count(*) AS readings
       FROM session
         JOIN reading ON reading.session_id = session.id AND reading.reader = session.reader AND reading.reread = 0
       WHERE session.student_id = ? AND reading.batch_id IS NULL AND reading.entered_at > session.created_at
       GROUP BY session.id, reading.entered_at ORDER BY reading.entered_at, session.id`,
    )
    .all(scope.studentId);
}

/** The alias of everybody whom the viewer may see by id, of those who turned out to be one of them too. */
export function readAliases(db: Database, scope: AcademyScope): ReadonlyMap<string, string> {
  const rows = db.sqlite
    .prepare<[{ academyId: string; seen: string | null }], { id: string; alias: string }>(
      `SELECT student.id, student.alias FROM student LEFT JOIN student AS other ON other.id = student.merged_into
       WHERE student.academy_id = @academyId
         AND (${VISIBLE_SQL} OR other.id IN (SELECT value FROM json_each(@seen)))`,
    )
    .all({ academyId: scope.academyId, ...seenBy(scope) });
  return new Map(rows.map(({ id, alias }) => [id, alias]));
}

/** The day of every session of the student by id, and of others by their ids: one that went to another student has one too. */
export function readSessionDays(
  db: Database,
  scope: StudentScope,
  others: readonly string[],
): ReadonlyMap<string, string> {
  const rows = db.sqlite
    .prepare<[string, string, string], { id: string; day: string }>(
      `SELECT id, day FROM session WHERE student_id = ?
       UNION SELECT session.id, session.day FROM session JOIN student ON student.id = student_id
       WHERE academy_id = ? AND session.id IN (SELECT value FROM json_each(?))`,
    )
    .all(scope.studentId, scope.academyId, JSON.stringify(others));
  return new Map(rows.map(({ id, day }) => [id, day]));
}

/** The group that was said of a session when it was entered; undefined: no such session of the student. */
export function readSaidGroup(db: Database, scope: StudentScope, sessionId: string): string | undefined {
  return db.sqlite
    .prepare<[string, string], string>("SELECT said_club_group FROM session WHERE id = ? AND student_id = ?")
    .pluck()
    .get(sessionId, scope.studentId);
}
