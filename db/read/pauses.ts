import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { seenBy, VISIBLE_SQL } from "./visible";

/** Days of one pause; of whatever it is for nothing is read. */
export interface PauseDays {
  readonly studentId: string;
  readonly day: string;
  /** Null: no end is known. */
  readonly endDay: string | null;
}

/** Every pause of the students who may be seen in whose days a day lies; one for an injury tells its days alone, like any other. */
export function readPauses(db: Database, scope: AcademyScope, day: string): PauseDays[] {
  return db.sqlite
    .prepare<[object], PauseDays>(
      `SELECT event.student_id AS studentId, event.day, event.end_day AS endDay
       FROM event JOIN student ON student.id = event.student_id
       WHERE student.academy_id = @academyId AND ${VISIBLE_SQL} AND event.kind IN ('injury', 'pause')
         AND event.voided_at IS NULL AND event.day <= @day AND coalesce(event.end_day, @day) >= @day
       ORDER BY event.day, event.id`,
    )
    .all({ academyId: scope.academyId, day, ...seenBy(scope) });
}
