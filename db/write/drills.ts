import { and, eq, isNotNull, isNull } from "drizzle-orm";
import type { CalendarDay } from "@/lib/domain/calendar-day";
import type { AskedDose } from "@/lib/domain/drill-record";
import { type DrillDescription, type EarlierDrill, parseEarlierDrills } from "@/lib/domain/drill-version";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { type Drill, type FiledAssignment, readDrills, type UsualDose } from "../read/drills";
import { drill, drillAssignment } from "../schema-work";
import type { RecordedBy } from "./events";
import { updateRevision } from "./students";

export type AssignmentInsert =
  | { readonly kind: "inserted" }
  | { readonly kind: "unknown-drill"; readonly drillId: string };

/** A new drill of the library; how it is usually given may be left out. It is offered, and nothing of it has changed yet. */
export function insertDrill(
  db: Database,
  scope: AcademyScope,
  entered: Omit<Drill, keyof UsualDose | "retiredOn" | "earlier"> & Partial<UsualDose>,
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

/** Whether a drill was ever given to anybody, what was taken back too. */
function wasGiven(db: Database, drillId: string): boolean {
  const of = eq(drillAssignment.drillId, drillId);
  return db.orm.select({ id: drillAssignment.id }).from(drillAssignment).where(of).limit(1).get() !== undefined;
}

/** A drill as it is from now on, the changes that were in sight when it was typed, and who changes it why. */
export interface DrillChange {
  readonly drillId: string;
  readonly becomes: DrillDescription;
  /** How many changes of the drill were in sight. */
  readonly seen: number;
  readonly by: RecordedBy & { readonly why: string; readonly today: CalendarDay };
}

/**
 * Describes a drill anew; how it was described until now is kept beside it. What it is for changes only as long as it was given
 * to nobody: a drill's history is that of one fundamental.
 *
 * @returns `stale`: it was changed by somebody else meanwhile; `given`: it is for another fundamental and was given; in both
 * cases, and for a drill of another academy, nothing was written
 */
export function updateDrill(
  db: Database,
  scope: AcademyScope,
  { drillId, becomes, seen, by }: DrillChange,
): { readonly kind: "updated" | "stale" | "given" | "unknown-drill" } {
  return inTransaction(db, () => {
    const now = readDrills(db, scope).find(({ id }) => id === drillId);
    if (now === undefined) return { kind: "unknown-drill" };
    const { id: _id, earlier, ...described } = now;
    const before = parseEarlierDrills(earlier);
    if (before.length !== seen) return { kind: "stale" };
    if (becomes.fundamentalId !== now.fundamentalId && wasGiven(db, drillId)) return { kind: "given" };
    const { who, why, now: changedAt, today } = by;
    const kept: readonly EarlierDrill[] = [...before, { ...described, until: today, who, why, changedAt }];
    db.orm
      .update(drill)
      .set({ ...becomes, earlier: JSON.stringify(kept) })
      .where(and(eq(drill.id, drillId), eq(drill.academyId, scope.academyId)))
      .run();
    return { kind: "updated" };
  });
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
