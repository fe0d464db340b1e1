import type { Practice } from "@/lib/domain/practice";
import type { StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";

/** Practice ready to be kept. */
export type NewPractice = Omit<Practice, "voidedAt">;

/**
 * Adds practice, all of it or none. Practice is no evidence: no analysis rests on it, so none goes stale.
 *
 * @returns how many were written: an id that is on file, as when a form is sent twice, is passed over
 * @throws Error for a drill that wasn't given to this student
 */
export function insertPractice(db: Database, scope: StudentScope, entries: readonly NewPractice[]): number {
  const { studentId } = scope;
  return inTransaction(db, () => {
    const given = db.sqlite
      .prepare<[string, string], number>("SELECT 1 FROM drill_assignment WHERE id = ? AND student_id = ?")
      .pluck();
    const insert = db.sqlite.prepare<[NewPractice & { studentId: string }]>(
      `INSERT INTO practice (id, student_id, day, assignment_id, minutes, balls, felt, source, who, recorded_at)
       VALUES (:id, :studentId, :day, :assignmentId, :minutes, :balls, :felt, :source, :who, :recordedAt)
       ON CONFLICT (id) DO NOTHING`,
    );
    let written = 0;
    for (const entry of entries) {
      if (entry.assignmentId !== null && given.get(entry.assignmentId, studentId) === undefined)
        throw new Error(`no such drill of this student: ${entry.assignmentId}`);
      written += insert.run({ ...entry, studentId }).changes;
    }
    return written;
  });
}

/**
 * Takes practice back, or puts it back; the row stays.
 *
 * @param voidedAt the hour at which it is taken back; null: it is put back
 */
export function updatePracticeVoided(
  db: Database,
  scope: StudentScope,
  { practiceId, voidedAt }: { readonly practiceId: string; readonly voidedAt: string | null },
): { readonly kind: "updated" | "unchanged" } {
  const { changes } = db.sqlite
    .prepare<[string | null, string, string, string | null]>(
      "UPDATE practice SET voided_at = ? WHERE id = ? AND student_id = ? AND (voided_at IS NULL) <> (? IS NULL)",
    )
    .run(voidedAt, practiceId, scope.studentId, voidedAt);
  return { kind: changes === 1 ? "updated" : "unchanged" };
}
