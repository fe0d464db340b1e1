import type { DueDrill } from "@/lib/domain/drill-record";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { seenBy, VISIBLE_SQL } from "./visible";

/**
 * Drills that run and whose day to be measured again has come, of every student whom the viewer may see; those that wait
 * longest first.
 *
 * @param today the day that is asked about; a drill that is to be measured again that day is due
 */
export function readDrillsDue(db: Database, scope: AcademyScope, today: string): DueDrill[] {
  return db.sqlite
    .prepare<[{ academy: string; today: string; seen: string | null }], DueDrill>(
      `SELECT student.id AS studentId, student.alias AS alias, given.id AS assignmentId, drill.name AS drill,
         given.fundamental_id AS fundamentalId, given.start_day AS start, given.remeasure_on AS remeasureOn,
         (SELECT max(session.day) FROM session WHERE session.student_id = student.id
          AND session.day >= given.remeasure_on AND session.day <= @today) AS filmedOn
       FROM drill_assignment AS given JOIN drill ON drill.id = given.drill_id JOIN student ON student.id = given.student_id
       WHERE student.academy_id = @academy AND ${VISIBLE_SQL} AND given.end_day IS NULL AND given.voided_at IS NULL
         AND given.remeasure_on <= @today AND student.departed_on IS NULL AND student.merged_into IS NULL
       ORDER BY given.remeasure_on, student.alias, given.id`,
    )
    .all({ academy: scope.academyId, today, ...seenBy(scope) });
}
