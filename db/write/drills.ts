import { and, eq, isNotNull, isNull } from "drizzle-orm";
import type { AskedDose } from "@/lib/domain/drill-record";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import type { Drill, FiledAssignment, UsualDose } from "../read/drills";
import { drill, drillAssignment } from "../schema-work";
import type { RecordedBy } from "./events";
import { updateRevision } from "./students";

export type AssignmentInsert =
  | { readonly kind: "inserted" }
  | { readonly kind: "unknown-drill"; readonly drillId: string };

/** A new drill of the library; how it is usually given may be left out. */
export function insertDrill(
  db: Database,
  scope: AcademyScope,
  entered: Omit<Drill, keyof UsualDose> & Partial<UsualDose>,
): void {
  const { id, name, fundamentalId, how, cautions, dose, reps, minutesADay, daysAWeek, remeasureDays } = entered;
  db.orm
    .insert(drill)
    .values({
      ...{ id, academyId: scope.academyId, name, fundamentalId, how, cautions },
      ...{ dose, reps, minutesADay, daysAWeek, remeasureDays },
    })
    .run();
}

/** `by`: left out where nobody gave it by hand. `unknown-drill`: not in the library of the student's academy; nothing was written. */
export function insertAssignment(
  db: Database,
  scope: StudentScope,
  given: Omit<FiledAssignment, "drill" | keyof AskedDose> & Partial<AskedDose>,
  by?: RecordedBy,
): AssignmentInsert {
  const { id, drillId, fundamentalId, start, end, dose, reps, minutesADay, daysAWeek, stopRule, remeasureOn } = given;
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
      .values({
        id,
        studentId,
        drillId,
        fundamentalId,
        startDay: start,
        endDay: end,
        dose,
        ...{ reps, minutesADay, daysAWeek, stopRule, remeasureOn },
        who: by?.who ?? "",
        recordedAt: by?.now ?? null,
      })
      .run();
    return { kind: "inserted" };
  });
}

/** A drill's end, and why. */
export interface AssignmentEnd {
  readonly assignmentId: string;
  readonly end: string;
  readonly why: string;
}

/** Stops a drill that runs. `unchanged`: no such drill of the student that runs, or its end lies before its start. */
export function updateAssignmentEnd(
  db: Database,
  scope: StudentScope,
  { assignmentId, end, why }: AssignmentEnd,
): { readonly kind: "updated" | "unchanged" } {
  return inTransaction(db, () => {
    const { changes } = db.sqlite
      .prepare<[string, string, string, string, string]>(
        `UPDATE drill_assignment SET end_day = ?, end_why = ?
         WHERE id = ? AND student_id = ? AND end_day IS NULL AND voided_at IS NULL AND start_day <= ?`,
      )
      .run(end, why, assignmentId, scope.studentId, end);
    if (changes === 0) return { kind: "unchanged" };
    updateRevision(db, scope);
    return { kind: "updated" };
  });
}

/**
 * Takes a given drill back, or puts it back with the end that it had. The row stays; taken back, no chart
 * knows of it.
 */
export function updateAssignmentTakenBack(
  db: Database,
  scope: StudentScope,
  { assignmentId, wish, now }: { readonly assignmentId: string; readonly wish: "take" | "put"; readonly now: string },
): { readonly kind: "updated" | "unchanged" } {
  return inTransaction(db, () => {
    const { changes } = db.orm
      .update(drillAssignment)
      .set({ voidedAt: wish === "take" ? now : null })
      .where(
        and(
          eq(drillAssignment.id, assignmentId),
          eq(drillAssignment.studentId, scope.studentId),
          wish === "take" ? isNull(drillAssignment.voidedAt) : isNotNull(drillAssignment.voidedAt),
        ),
      )
      .run();
    if (changes === 0) return { kind: "unchanged" };
    updateRevision(db, scope);
    return { kind: "updated" };
  });
}
