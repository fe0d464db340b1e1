import { asc, eq } from "drizzle-orm";
import type { DecisionRecord } from "@/lib/domain/drill-decision";
import type { StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { drillDecision } from "../schema-plans";
import { drillAssignment } from "../schema-work";

/**
 * What was decided about a student's drills on the days on which they were to be measured again, oldest first.
 *
 * @param knownAt ISO instant: decisions that were entered later are left out; absent: everything on file
 */
export function readDrillDecisions(db: Database, scope: StudentScope, knownAt?: string): DecisionRecord[] {
  const rows = db.orm
    .select({
      assignmentId: drillDecision.assignmentId,
      decision: drillDecision.decision,
      why: drillDecision.why,
      remeasureWas: drillDecision.remeasureWas,
      day: drillDecision.day,
      who: drillDecision.who,
      recordedAt: drillDecision.recordedAt,
    })
    .from(drillDecision)
    .innerJoin(drillAssignment, eq(drillAssignment.id, drillDecision.assignmentId))
    .where(eq(drillAssignment.studentId, scope.studentId))
    .orderBy(asc(drillDecision.id))
    .all();
  return knownAt === undefined ? rows : rows.filter(({ recordedAt }) => recordedAt <= knownAt);
}
