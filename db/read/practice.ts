import { and, asc, eq, isNotNull, or } from "drizzle-orm";
import type { Practice, SaidPain } from "@/lib/domain/practice";
import type { PainScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { practice } from "../schema-entry";

/**
 * Everything logged of a student by day, what was taken back too. An entry that says nothing but that something hurts is no
 * practice, and isn't read here: that it is there would tell it.
 */
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
    .where(and(eq(practice.studentId, scope.studentId), or(isNotNull(practice.minutes), isNotNull(practice.balls))))
    .orderBy(asc(practice.day), asc(practice.recordedAt), asc(practice.id))
    .all();
}

/** What was said to hurt on the days of practice and stands, by day. */
export function readSaidPain(db: Database, pain: PainScope): SaidPain[] {
  return db.sqlite
    .prepare<[string], SaidPain>(
      `SELECT id, day, pain AS place, who, recorded_at AS recordedAt FROM practice
       WHERE student_id = ? AND pain IS NOT NULL AND voided_at IS NULL ORDER BY day, recorded_at, id`,
    )
    .all(pain.studentId);
}

/** Days on which something was said to hurt that stands, of several students at once. */
export function readSaidPainDays(
  db: Database,
  pains: readonly PainScope[],
): { readonly studentId: string; readonly day: string }[] {
  return db.sqlite
    .prepare<[string], { readonly studentId: string; readonly day: string }>(
      `SELECT student_id AS studentId, day FROM practice
       WHERE student_id IN (SELECT value FROM json_each(?)) AND pain IS NOT NULL AND voided_at IS NULL ORDER BY day, id`,
    )
    .all(JSON.stringify(pains.map(({ studentId }) => studentId)));
}

/** The latest word of each student's family that something hurts, of a day or later, by student. */
export function readLatestPains(
  db: Database,
  pains: readonly PainScope[],
  from: string,
): (SaidPain & { readonly studentId: string })[] {
  return db.sqlite
    .prepare<[string, string], SaidPain & { readonly studentId: string }>(
      `SELECT studentId, id, day, place, who, recordedAt FROM (
         SELECT student_id AS studentId, id, day, pain AS place, who, recorded_at AS recordedAt,
           row_number() OVER (PARTITION BY student_id ORDER BY day DESC, recorded_at DESC, id DESC) AS latest
         FROM practice
         WHERE student_id IN (SELECT value FROM json_each(?)) AND pain IS NOT NULL AND voided_at IS NULL AND day >= ?)
       WHERE latest = 1 ORDER BY studentId`,
    )
    .all(JSON.stringify(pains.map(({ studentId }) => studentId)), from);
}
