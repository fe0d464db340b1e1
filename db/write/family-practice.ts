import type { StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import type { FiledPractice } from "../read/family-practice";

/**
 * Adds a row of practice that the family logged, or that something hurts. Practice is no evidence: no analysis rests on it.
 *
 * @returns how many were written: an id that is on file, as when a form is sent twice, is passed over
 */
export function insertFamilyPractice(db: Database, scope: StudentScope, entry: FiledPractice): number {
  return db.sqlite
    .prepare<[FiledPractice & { readonly studentId: string }]>(
      `INSERT INTO practice (id, student_id, day, assignment_id, minutes, balls, felt, source, pain, who, recorded_at)
       SELECT :id, :studentId, :day, :assignmentId, :minutes, :balls, :felt, :source, :pain, :who, :recordedAt
       WHERE :assignmentId IS NULL
         OR EXISTS (SELECT 1 FROM drill_assignment WHERE id = :assignmentId AND student_id = :studentId)
       ON CONFLICT (id) DO NOTHING`,
    )
    .run({ ...entry, studentId: scope.studentId }).changes;
}

/**
 * Takes back what the family logged; what the coach logged stays.
 *
 * @param voidedAt the hour at which it is taken back
 */
export function updateFamilyPracticeVoided(
  db: Database,
  scope: StudentScope,
  { practiceId, voidedAt }: { readonly practiceId: string; readonly voidedAt: string },
): "taken-back" | "unchanged" {
  const { changes } = db.sqlite
    .prepare<[string, string, string]>(
      "UPDATE practice SET voided_at = ? WHERE id = ? AND student_id = ? AND source = 'family' AND voided_at IS NULL",
    )
    .run(voidedAt, practiceId, scope.studentId);
  return changes === 1 ? "taken-back" : "unchanged";
}
