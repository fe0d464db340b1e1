import { asc, eq } from "drizzle-orm";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { DrillAssignment } from "@/lib/domain/student";
import type { Database } from "../client";
import { drill, drillAssignment } from "../schema-work";

/** A drill of the academy. */
export type Drill = Omit<typeof drill.$inferSelect, "academyId">;

/** The academy's drills, by name. */
export function readDrills(db: Database, scope: AcademyScope): Drill[] {
  const { id, name, fundamentalId, how, cautions } = drill;
  return db.orm
    .select({ id, name, fundamentalId, how, cautions })
    .from(drill)
    .where(eq(drill.academyId, scope.academyId))
    .orderBy(asc(drill.name), asc(drill.id))
    .all();
}

/** The drills given to a student, oldest first. */
export function readAssignments(db: Database, scope: StudentScope): DrillAssignment[] {
  return db.orm
    .select({
      id: drillAssignment.id,
      drill: drill.name,
      fundamentalId: drillAssignment.fundamentalId,
      start: drillAssignment.startDay,
      end: drillAssignment.endDay,
      dose: drillAssignment.dose,
    })
    .from(drillAssignment)
    .innerJoin(drill, eq(drill.id, drillAssignment.drillId))
    .where(eq(drillAssignment.studentId, scope.studentId))
    .orderBy(asc(drillAssignment.startDay), asc(drillAssignment.id))
    .all();
}
