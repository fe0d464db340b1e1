import type { CalendarDay } from "@/lib/domain/calendar-day";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { seenBy, VISIBLE_SQL } from "./visible";

/** A stretch of days, both included. */
export interface Stretch {
  readonly from: CalendarDay;
  readonly to: CalendarDay;
}

function studentsIn(
  db: Database,
  scope: AcademyScope,
  { from, to }: Stretch,
  [table, first, last]: readonly [table: string, first: string, last: string],
): ReadonlySet<string> {
  return new Set(
    db.sqlite
      .prepare<[string, string, string, { seen: string | null }], string>(
        `SELECT DISTINCT given.student_id FROM ${table} AS given JOIN student ON student.id = given.student_id
         WHERE student.academy_id = ? AND given.voided_at IS NULL AND given.${first} <= ?
           AND coalesce(given.${last}, '9999-12-31') >= ? AND ${VISIBLE_SQL}`,
      )
      .pluck()
      .all(scope.academyId, to, from, seenBy(scope)),
  );
}

/** Ids of students who were on a drill on any day of a stretch, as far as the viewer may see them; what was taken back was given to nobody. */
export function readDrilledStudents(db: Database, scope: AcademyScope, stretch: Stretch): ReadonlySet<string> {
  return studentsIn(db, scope, stretch, ["drill_assignment", "start_day", "end_day"]);
}

/** The same of students who were left without a drill on purpose. */
export function readWaitingStudents(db: Database, scope: AcademyScope, stretch: Stretch): ReadonlySet<string> {
  return studentsIn(db, scope, stretch, ["waiting", "from_day", "until_day"]);
}
