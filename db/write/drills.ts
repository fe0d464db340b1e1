import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import type { Drill } from "../read/drills";
import { drill, drillAssignment } from "../schema-work";

/** Adds a drill to the academy's catalogue. */
export function insertDrill(db: Database, scope: AcademyScope, row: Drill): void {
  db.orm
    .insert(drill)
    .values({ ...row, academyId: scope.academyId })
    .run();
}

/** A drill as given to a student. */
export interface EnteredAssignment {
  readonly id: string;
  readonly drillId: string;
  readonly fundamentalId: string;
  readonly start: string;
  readonly end: string | null;
  readonly dose: string;
}

/** Gives a student a drill. No verdict rests on it. */
export function insertAssignment(db: Database, scope: StudentScope, entered: EnteredAssignment): void {
  const { id, drillId, fundamentalId, start, end, dose } = entered;
  db.orm
    .insert(drillAssignment)
    .values({ id, studentId: scope.studentId, drillId, fundamentalId, startDay: start, endDay: end, dose })
    .run();
}
