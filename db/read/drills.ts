import { asc, eq } from "drizzle-orm";
import type { AskedDose, AssignmentRecord } from "@/lib/domain/drill-record";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { DrillAssignment } from "@/lib/domain/student";
import type { Database } from "../client";
import { drill, drillAssignment } from "../schema-work";
import { seenBy, VISIBLE_SQL } from "./visible";

/** A drill of the academy's library. */
export type Drill = Omit<typeof drill.$inferSelect, "academyId">;

/** How a drill is usually given, as far as that is said. */
export type UsualDose = Pick<Drill, "dose" | "reps" | "minutesADay" | "daysAWeek" | "remeasureDays">;

/** A drill given to a student; `drill` is its name. */
export type FiledAssignment = DrillAssignment & AskedDose & { readonly drillId: string };

/** By name. */
export function readDrills(db: Database, scope: AcademyScope): Drill[] {
  return db.orm
    .select({
      id: drill.id,
      name: drill.name,
      fundamentalId: drill.fundamentalId,
      how: drill.how,
      cautions: drill.cautions,
      dose: drill.dose,
      reps: drill.reps,
      minutesADay: drill.minutesADay,
      daysAWeek: drill.daysAWeek,
      remeasureDays: drill.remeasureDays,
      retiredOn: drill.retiredOn,
      earlier: drill.earlier,
    })
    .from(drill)
    .where(eq(drill.academyId, scope.academyId))
    .orderBy(asc(drill.name), asc(drill.id))
    .all();
}

/**
 * How often each drill of the library was given to students whom the viewer may see, what was taken back too; drills that were
 * never given aren't among them.
 */
export function readDrillCounts(db: Database, scope: AcademyScope): ReadonlyMap<string, number> {
  const rows = db.sqlite
    .prepare<[string, { seen: string | null }], { drillId: string; given: number }>(
      `SELECT drill_id AS drillId, count(*) AS given FROM drill_assignment
       JOIN student ON student.id = drill_assignment.student_id
       WHERE student.academy_id = ? AND ${VISIBLE_SQL} GROUP BY drill_id ORDER BY drill_id`,
    )
    .all(scope.academyId, seenBy(scope));
  return new Map(rows.map(({ drillId, given }) => [drillId, given]));
}

/** Everything given to a student by first day, what was taken back too, with the days it had. */
export function readAssignmentLog(db: Database, scope: StudentScope): AssignmentRecord[] {
  const rows = db.orm
    .select({
      id: drillAssignment.id,
      drillId: drillAssignment.drillId,
      drill: drill.name,
      fundamentalId: drillAssignment.fundamentalId,
      start: drillAssignment.startDay,
      end: drillAssignment.endDay,
      dose: drillAssignment.dose,
      reps: drillAssignment.reps,
      minutesADay: drillAssignment.minutesADay,
      daysAWeek: drillAssignment.daysAWeek,
      stopRule: drillAssignment.stopRule,
      remeasureOn: drillAssignment.remeasureOn,
      who: drillAssignment.who,
      recordedAt: drillAssignment.recordedAt,
      endWhy: drillAssignment.endWhy,
      voidedAt: drillAssignment.voidedAt,
    })
    .from(drillAssignment)
    .innerJoin(drill, eq(drill.id, drillAssignment.drillId))
    .where(eq(drillAssignment.studentId, scope.studentId))
    .orderBy(asc(drillAssignment.startDay), asc(drillAssignment.id))
    .all();
  return rows.map(({ voidedAt, ...row }) => ({ ...row, state: voidedAt === null ? "stands" : "taken-back" }));
}

/** By first day; what was taken back was given to nobody. */
export function readAssignments(db: Database, scope: StudentScope): FiledAssignment[] {
  return readAssignmentLog(db, scope)
    .filter((each) => each.state === "stands")
    .map(({ who: _who, recordedAt: _recorded, endWhy: _why, state: _state, ...given }) => given);
}
