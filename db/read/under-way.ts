import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { seenBy, VISIBLE_SQL } from "./visible";

/** A drill that runs on a day, by its name. */
export interface DrillUnderWay {
  readonly studentId: string;
  readonly fundamentalId: string;
  readonly drill: string;
  readonly start: string;
}

/** A break or a pause that is on, whatever it is for: what hurts isn't read. */
export interface PauseUnderWay {
  readonly studentId: string;
  readonly day: string;
  /** The last day; null: no end is known. */
  readonly endDay: string | null;
}

/** Every drill that was given and runs on a day, by student, the earliest first. */
export function readDrillsUnderWay(db: Database, scope: AcademyScope, day: string): DrillUnderWay[] {
  return db.sqlite
    .prepare<[{ academyId: string; day: string; seen: string | null }], DrillUnderWay>(
      `SELECT student_id AS studentId, given.fundamental_id AS fundamentalId, drill.name AS drill, start_day AS start
       FROM drill_assignment AS given JOIN drill ON drill.id = drill_id JOIN student ON student.id = student_id
       WHERE student.academy_id = @academyId AND ${VISIBLE_SQL} AND voided_at IS NULL
         AND start_day <= @day AND (end_day IS NULL OR end_day >= @day)
       ORDER BY student_id, start_day, given.id`,
    )
    .all({ academyId: scope.academyId, day, ...seenBy(scope) });
}

/** Every break and every pause with a length that is on on a day, by student, the one that began last at the end. */
export function readPausesUnderWay(db: Database, scope: AcademyScope, day: string): PauseUnderWay[] {
  return db.sqlite
    .prepare<[{ academyId: string; day: string; seen: string | null }], PauseUnderWay>(
      `SELECT student_id AS studentId, day, end_day AS endDay FROM event JOIN student ON student.id = student_id
       WHERE student.academy_id = @academyId AND ${VISIBLE_SQL} AND voided_at IS NULL
         AND kind IN ('break', 'injury', 'pause') AND day <= @day AND (end_day IS NULL OR end_day >= @day)
       ORDER BY student_id, day, event.id`,
    )
    .all({ academyId: scope.academyId, day, ...seenBy(scope) });
}
