import type { DecisionRecord } from "@/lib/domain/drill-decision";
import type { StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { drillDecision } from "../schema-plans";
import { updateAssignmentEnd } from "./drills";
import { updateRevision } from "./students";

/** A decision, and the day on which the drill is measured next; null: it ends with the decision's day, for its reason. */
export type NewDecision = Omit<DecisionRecord, "remeasureWas"> & { readonly next: string | null };

/**
 * Adds what was decided about a drill that runs; earlier decisions stay as its history. With a next day the drill goes on
 * until then, without one it ends that day.
 *
 * @returns `unchanged` where no such drill of the student runs, or it began after the decision's day: nothing was written
 */
export function insertDrillDecision(
  db: Database,
  scope: StudentScope,
  { next, ...decided }: NewDecision,
): "recorded" | "unchanged" {
  const { assignmentId, day, why } = decided;
  return inTransaction(db, () => {
    const running = db.sqlite
      .prepare<[string, string, string], { remeasureWas: string | null }>(
        `SELECT remeasure_on AS remeasureWas FROM drill_assignment
         WHERE id = ? AND student_id = ? AND end_day IS NULL AND voided_at IS NULL AND start_day <= ?`,
      )
      .get(assignmentId, scope.studentId, day);
    if (running === undefined) return "unchanged";
    if (next === null) updateAssignmentEnd(db, scope, { assignmentId, end: day, why });
    else {
      db.sqlite
        .prepare<[string, string]>("UPDATE drill_assignment SET remeasure_on = ? WHERE id = ?")
        .run(next, assignmentId);
      updateRevision(db, scope);
    }
    db.orm
      .insert(drillDecision)
      .values({ ...decided, remeasureWas: running.remeasureWas })
      .run();
    return "recorded";
  });
}
