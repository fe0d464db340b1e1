import type { ChangedRows, RecordChange } from "@/lib/domain/record-change";
import type { StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import type { AcademyKey } from "./club-groups";

type Row = Omit<RecordChange, keyof ChangedRows> & { readonly before: string; readonly after: string };

const COLUMNS = `id, kind, student_id AS studentId, other_student_id AS otherStudentId, session_id AS sessionId,
  before, after, who, why, changed_at AS changedAt, undone_at AS undoneAt, undone_by AS undoneBy`;

function parsed({ before, after, ...row }: Row): RecordChange {
  const { rows, mark } = JSON.parse(after) as { rows: ChangedRows["after"]; mark: ChangedRows["mark"] };
  return { ...row, before: JSON.parse(before) as ChangedRows["before"], after: rows, mark };
}

/** Every change of the academy's records in the order in which they were made, those that were undone too. */
export function readAcademyChanges(db: Database, scope: AcademyKey): RecordChange[] {
  return db.sqlite
    .prepare<[string], Row>(`SELECT ${COLUMNS} FROM record_change WHERE academy_id = ? ORDER BY id`)
    .all(scope.academyId)
    .map(parsed);
}

/** Those that took something from this student's record or brought something into it, and those of students merged into it. */
export function readRecordChanges(db: Database, scope: StudentScope): RecordChange[] {
  return db.sqlite
    .prepare<[{ academyId: string; studentId: string }], Row>(
      `WITH RECURSIVE one (id) AS (
         SELECT :studentId UNION SELECT student.id FROM student JOIN one ON student.merged_into = one.id)
       SELECT ${COLUMNS} FROM record_change
       WHERE academy_id = :academyId AND (student_id IN (SELECT id FROM one) OR other_student_id IN (SELECT id FROM one))
       ORDER BY id`,
    )
    .all({ academyId: scope.academyId, studentId: scope.studentId })
    .map(parsed);
}
