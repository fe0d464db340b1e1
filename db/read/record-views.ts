import type { StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import type { recordView } from "../schema-privacy";

/** An entry of who looked at a record. */
export type KeptView = Omit<typeof recordView.$inferSelect, "id" | "studentId">;

/**
 * Who looked at a student's record, latest first, with the looks at records that turned out to be the same student's: an entry
 * is never changed, so that it stays under the name that it was made for.
 */
export function readRecordViews(db: Database, { academyId, studentId }: StudentScope): KeptView[] {
  return db.sqlite
    .prepare<[{ academyId: string; studentId: string }], KeptView>(
      `WITH RECURSIVE one (id) AS (
         SELECT id FROM student WHERE id = :studentId AND academy_id = :academyId
         UNION SELECT student.id FROM student JOIN one ON student.merged_into = one.id)
       SELECT who, role, what, place, viewed_at AS viewedAt FROM record_view
       WHERE student_id IN (SELECT id FROM one) ORDER BY record_view.id DESC`,
    )
    .all({ academyId, studentId });
}
