import { asc, eq } from "drizzle-orm";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { DrillAssignment } from "@/lib/domain/student";
import type { Database } from "../client";
import { drill, drillAssignment } from "../schema-work";

/** A drill of the academy's library. */
export type Drill = Omit<typeof drill.$inferSelect, "academyId">;

/** A drill given to a student; `drill` is its name. */
export type FiledAssignment = DrillAssignment & { readonly drillId: string };

/** By name. */
export function readDrills(db: Database, scope: AcademyScope): Drill[] {
  return db.orm
    .select({
      id: drill.id,
      name: drill.name,
      fundamentalId: drill.fundamentalId,
      how: drill.how,
      cautions: drill.cautions,
    })
    .from(drill)
    .where(eq(drill.academyId, scope.academyId))
    .orderBy(asc(drill.name), asc(drill.id))
    .all();
}

/** By first day. */
export function readAssignments(db: Database, scope: StudentScope): FiledAssignment[] {
  return db.orm
    .select({
      id: drillAssignment.id,
      drillId: drillAssignment.drillId,
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
