import { asc, eq } from "drizzle-orm";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Waiting } from "@/lib/domain/waiting";
import type { Database } from "../client";
import { waiting } from "../schema-plans";
import { seenBy, VISIBLE_SQL } from "./visible";

/** Every stretch in which a student was left without a drill on purpose, oldest first, what was taken back too. */
export function readWaiting(db: Database, { studentId }: StudentScope): Waiting[] {
  return db.orm
    .select({
      id: waiting.id,
      fundamentalId: waiting.fundamentalId,
      fromDay: waiting.fromDay,
      untilDay: waiting.untilDay,
      who: waiting.who,
      recordedAt: waiting.recordedAt,
      voidedAt: waiting.voidedAt,
    })
    .from(waiting)
    .where(eq(waiting.studentId, studentId))
    .orderBy(asc(waiting.fromDay), asc(waiting.recordedAt), asc(waiting.id))
    .all();
}

/** Those for one fundamental that stand, of everybody whom the viewer may see. */
export function readAcademyWaiting(
  db: Database,
  scope: AcademyScope,
  fundamentalId: string,
): { readonly studentId: string; readonly fromDay: string; readonly untilDay: string | null }[] {
  return db.sqlite
    .prepare<
      [string, string, { seen: string | null }],
      { studentId: string; fromDay: string; untilDay: string | null }
    >(
      `SELECT waiting.student_id AS studentId, from_day AS fromDay, until_day AS untilDay
       FROM waiting JOIN student ON student.id = waiting.student_id
       WHERE student.academy_id = ? AND fundamental_id = ? AND voided_at IS NULL AND ${VISIBLE_SQL}
       ORDER BY waiting.student_id, from_day, waiting.id`,
    )
    .all(scope.academyId, fundamentalId, seenBy(scope));
}
