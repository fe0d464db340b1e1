import type { LastGiven } from "@/lib/domain/drill-record";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { seenBy, VISIBLE_SQL } from "./visible";

/**
 * How each drill of the library was last given to a student whom the viewer may see, the drill given last first; drills that
 * were never given aren't among them. Nothing of it names a student.
 */
export function readDrillUse(db: Database, scope: AcademyScope): LastGiven[] {
  return db.sqlite
    .prepare<[{ academy: string; seen: string | null }], LastGiven & { place: number }>(
      `SELECT * FROM (
         SELECT given.drill_id AS drillId, given.start_day AS start, given.dose AS dose, given.reps AS reps,
           given.minutes_a_day AS minutesADay, given.days_a_week AS daysAWeek, given.stop_rule AS stopRule, given.remeasure_on AS remeasureOn,
           row_number() OVER (PARTITION BY given.drill_id ORDER BY given.start_day DESC, given.id DESC) AS place
         FROM drill_assignment AS given JOIN student ON student.id = given.student_id
         WHERE student.academy_id = @academy AND ${VISIBLE_SQL} AND given.voided_at IS NULL
       ) WHERE place = 1 ORDER BY start DESC, drillId`,
    )
    .all({ academy: scope.academyId, ...seenBy(scope) })
    .map(({ place: _place, ...given }) => given);
}
