import { and, eq } from "drizzle-orm";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import type { Drill, FiledAssignment } from "../read/drills";
import { drill, drillAssignment } from "../schema-work";
import { updateRevision } from "./students";

export type AssignmentInsert =
  | { readonly kind: "inserted" }
  | { readonly kind: "unknown-drill"; readonly drillId: string };

export function insertDrill(db: Database, scope: AcademyScope, entered: Drill): void {
  const { id, name, fundamentalId, how, cautions } = entered;
  db.orm.insert(drill).values({ id, academyId: scope.academyId, name, fundamentalId, how, cautions }).run();
}

/** `unknown-drill`: not in the library of the student's academy; nothing was written. */
export function insertAssignment(
  db: Database,
  scope: StudentScope,
  given: Omit<FiledAssignment, "drill">,
): AssignmentInsert {
  const { id, drillId, fundamentalId, start, end, dose } = given;
  return inTransaction(db, () => {
    const known = db.orm
      .select({ id: drill.id })
      .from(drill)
      .where(and(eq(drill.id, drillId), eq(drill.academyId, scope.academyId)))
      .get();
    if (!known) return { kind: "unknown-drill", drillId };
    updateRevision(db, scope);
    const { studentId } = scope;
    db.orm
      .insert(drillAssignment)
      .values({ id, studentId, drillId, fundamentalId, startDay: start, endDay: end, dose })
      .run();
    return { kind: "inserted" };
  });
}
