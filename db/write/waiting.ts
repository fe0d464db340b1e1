import type { StudentScope } from "@/lib/domain/scope";
import type { Waiting } from "@/lib/domain/waiting";
import type { Database } from "../client";

/**
 * Marks that a student is left without a drill for a fundamental on purpose, from today on.
 *
 * @returns `unchanged`: it lasts already; nothing was written
 */
export function insertWaiting(
  db: Database,
  { studentId }: StudentScope,
  { id, fundamentalId, fromDay, who, recordedAt }: Omit<Waiting, "untilDay" | "voidedAt">,
): "updated" | "unchanged" {
  const { changes } = db.sqlite
    .prepare<[string, string, string, string, string, string, string, string]>(
      `INSERT INTO waiting (id, student_id, fundamental_id, from_day, who, recorded_at)
       SELECT ?, ?, ?, ?, ?, ? WHERE NOT EXISTS (SELECT 1 FROM waiting
         WHERE student_id = ? AND fundamental_id = ? AND until_day IS NULL AND voided_at IS NULL)`,
    )
    .run(id, studentId, fundamentalId, fromDay, who, recordedAt, studentId, fundamentalId);
  return changes === 0 ? "unchanged" : "updated";
}

/**
 * Ends what lasts for a fundamental: with a last day, or, where that lies before its first, as if it had not been.
 *
 * @param until the last day
 * @returns `unchanged`: none lasts; nothing was written
 */
export function updateWaitingEnded(
  db: Database,
  { studentId }: StudentScope,
  { fundamentalId, until, now }: { readonly fundamentalId: string; readonly until: string; readonly now: string },
): "updated" | "unchanged" {
  const { changes } = db.sqlite
    .prepare<[string, string, string, string, string, string]>(
      `UPDATE waiting SET until_day = iif(from_day <= ?, ?, until_day), voided_at = iif(from_day <= ?, NULL, ?)
       WHERE student_id = ? AND fundamental_id = ? AND until_day IS NULL AND voided_at IS NULL`,
    )
    .run(until, until, until, now, studentId, fundamentalId);
  return changes === 0 ? "unchanged" : "updated";
}
