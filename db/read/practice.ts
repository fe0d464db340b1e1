import { asc, eq } from "drizzle-orm";
import type { Practice } from "@/lib/domain/practice";
import type { StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { practice } from "../schema-entry";

/** Everything logged of a student by day, what was taken back too. */
export function readPractice(db: Database, scope: StudentScope): Practice[] {
  return db.orm
    .select({
      id: practice.id,
      day: practice.day,
      assignmentId: practice.assignmentId,
      minutes: practice.minutes,
      balls: practice.balls,
      felt: practice.felt,
      source: practice.source,
      who: practice.who,
      recordedAt: practice.recordedAt,
      voidedAt: practice.voidedAt,
    })
    .from(practice)
    .where(eq(practice.studentId, scope.studentId))
    .orderBy(asc(practice.day), asc(practice.recordedAt), asc(practice.id))
    .all();
}
