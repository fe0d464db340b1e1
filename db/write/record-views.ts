import type { StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { writeQuietly } from "../quiet-writes";
import type { recordView } from "../schema-privacy";

/** One look at a student's record: by whom, at what, when. */
export type RecordView = Omit<typeof recordView.$inferInsert, "id" | "studentId">;

/**
 * Adds that somebody looked at students' records, all of them or none; such a row is never changed. A student who was erased
 * meanwhile gets none: nothing of theirs is to come back.
 *
 * @param looks in the order in which they happened
 */
export function insertRecordViews(
  db: Database,
  looks: readonly { readonly scope: StudentScope; readonly view: RecordView }[],
): void {
  const write = () => {
    const insert = db.sqlite.prepare<[RecordView & { studentId: string; academyId: string }]>(
      `INSERT INTO record_view (student_id, who, role, what, place, viewed_at)
       SELECT id, :who, :role, :what, :place, :viewedAt FROM student WHERE id = :studentId AND academy_id = :academyId`,
    );
    for (const { scope, view } of looks)
      insert.run({ ...view, studentId: scope.studentId, academyId: scope.academyId });
  };
  writeQuietly(db, () => inTransaction(db, write));
}
