import type { Practice } from "@/lib/domain/practice";
import type { PainScope } from "@/lib/domain/scope";
import type { PainPlace } from "@/lib/domain/student";
import type { Database } from "../client";

/** Practice with what was said of pain beside it. */
export type FiledPractice = Omit<Practice, "voidedAt"> & { readonly pain: PainPlace | null };

/**
 * What stands of a student's practice from a day on, and every report of pain that stands, by day and hour of entry. Where it
 * hurts is for the coach and the family alone: only their pages read this.
 */
export function readFamilyPractice(db: Database, pain: PainScope, from: string): FiledPractice[] {
  return db.sqlite
    .prepare<[string, string], FiledPractice>(
      `SELECT id, day, assignment_id AS assignmentId, minutes, balls, felt, source, pain, who, recorded_at AS recordedAt
       FROM practice WHERE student_id = ? AND voided_at IS NULL AND (day >= ? OR pain IS NOT NULL)
       ORDER BY day, recorded_at, id`,
    )
    .all(pain.studentId, from);
}
