import type { StudentScope } from "@/lib/domain/scope";
import { type Told, type ToldFinding, toldFindingsText } from "@/lib/domain/told";
import type { Database } from "../client";
import { told } from "../schema-plans";

/**
 * Keeps what a family was told, as it was sent. It is no evidence: analyses rest on the same data as before.
 *
 * @returns `kept-before`: the very text in that form stands for that day already, as after a second press; nothing was written
 */
export function insertTold(
  db: Database,
  { studentId }: StudentScope,
  said: Omit<Told, "findings" | "voidedAt"> & { readonly findings: readonly ToldFinding[] },
): "kept" | "kept-before" {
  const standing = db.sqlite
    .prepare<[string, string, string, string, string], 1>(
      `SELECT 1 FROM told WHERE student_id = ? AND club_group = ? AND kind = ? AND day = ? AND text = ?
       AND voided_at IS NULL`,
    )
    .get(studentId, said.clubGroup, said.kind, said.day, said.text);
  if (standing) return "kept-before";
  db.orm
    .insert(told)
    .values({ ...said, studentId, findings: toldFindingsText(said.findings) })
    .run();
  return "kept";
}

/**
 * Takes back that something was told, or puts it back; the row stays.
 *
 * @param voidedAt the hour at which it is taken back; null: it is put back
 * @returns `unchanged`: no such row of the student, or it stood so already; nothing was written
 */
export function updateToldVoided(
  db: Database,
  { studentId }: StudentScope,
  { toldId, voidedAt }: { readonly toldId: string; readonly voidedAt: string | null },
): "updated" | "unchanged" {
  const { changes } = db.sqlite
    .prepare<[string | null, string, string, string | null]>(
      "UPDATE told SET voided_at = ? WHERE id = ? AND student_id = ? AND (voided_at IS NULL) <> (? IS NULL)",
    )
    .run(voidedAt, toldId, studentId, voidedAt);
  return changes === 0 ? "unchanged" : "updated";
}
