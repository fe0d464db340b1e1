import { and, asc, eq, isNull } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { academy, student } from "../schema";
import { familyLink, retentionNotice } from "../schema-privacy";
import { visible } from "./visible";

/** What the time of a student's record is counted from. */
export interface RecordTimes {
  readonly studentId: string;
  readonly alias: string;
  readonly departedOn: string | null;
  /** The last instant at which anything was entered of the student. */
  readonly lastEntered: string;
}

const ENTERED: readonly (readonly [table: string, column: string])[] = [
  ["session", "created_at"],
  ["practice", "recorded_at"],
  ["event", "recorded_at"],
  ["drill_assignment", "recorded_at"],
  ["asking", "recorded_at"],
  ["priority_choice", "recorded_at"],
  ["film_plan", "recorded_at"],
  ["told", "recorded_at"],
  ["waiting", "recorded_at"],
  ["fair_allocation", "recorded_at"],
  ["consent", "recorded_at"],
  ["family_link", "made_at"],
  ["family_link", "renewed_at"],
  ["goal_band", "created_at"],
  ["reading", "entered_at"],
  ["charge", "recorded_at"],
  ["record_change", "changed_at"],
  ["read_back", "drawn_at"],
  ["draft", "updated_at"],
];

/** What is entered of something that is a student's. */
const ENTERED_OF: readonly (readonly [table: string, column: string, owner: string, key: string])[] = [
  ["correction", "corrected_at", "reading", "reading_id"],
  ["rebaseline_change", "changed_at", "event", "event_id"],
  ["drill_decision", "recorded_at", "drill_assignment", "assignment_id"],
];

/** Everybody's times, by alias, without those who turned out to be another. Looking at a record is no use of it. */
export function readRecordTimes(db: Database, { academyId }: AcademyScope): RecordTimes[] {
  const latest = ENTERED.map(
    ([table, column]) => `SELECT student_id, max(${column}) AS at FROM ${table} GROUP BY student_id`,
  ).join(" UNION ALL ");
  // A correction is of the day on which it was made, whatever the session's.
  const of = ENTERED_OF.map(
    ([table, column, owner, key]) => `SELECT ${owner}.student_id, max(${table}.${column}) AS at FROM ${table}
      JOIN ${owner} ON ${owner}.id = ${table}.${key} GROUP BY ${owner}.student_id`,
  ).join(" UNION ALL ");
  return db.sqlite
    .prepare<[string], RecordTimes>(
      `WITH entered AS (${latest} UNION ALL ${of}),
         last AS (SELECT student_id, max(at) AS at FROM entered GROUP BY student_id)
       SELECT student.id AS studentId, alias, departed_on AS departedOn,
         max(student.created_at, coalesce(last.at, '')) AS lastEntered
       FROM student LEFT JOIN last ON last.student_id = student.id
       WHERE academy_id = ? AND merged_into IS NULL ORDER BY alias, student.id`,
    )
    .all(academyId);
}

/** A family's link that has ended, by its time or by hand. */
export interface EndedLink {
  readonly linkId: string;
  readonly studentId: string;
  readonly endedAt: string;
}

/** Links that opened nothing any more at an instant. */
export function readEndedLinks(db: Database, { academyId }: AcademyScope, now: string): EndedLink[] {
  return db.orm
    .select({
      linkId: familyLink.id,
      studentId: familyLink.studentId,
      expiresAt: familyLink.expiresAt,
      revokedAt: familyLink.revokedAt,
    })
    .from(familyLink)
    .innerJoin(student, eq(student.id, familyLink.studentId))
    .where(eq(student.academyId, academyId))
    .orderBy(asc(familyLink.id))
    .all()
    .map(({ expiresAt, revokedAt, ...link }) => ({
      ...link,
      endedAt: revokedAt !== null && revokedAt < expiresAt ? revokedAt : expiresAt,
    }))
    .filter(({ endedAt }) => endedAt <= now);
}

/** That something will be erased, as announced. */
export type Notice = typeof retentionNotice.$inferSelect;

/** Every announcement of an academy, the next to come first. */
export function readNotices(db: Database, { academyId }: AcademyScope): Notice[] {
  return db.orm
    .select()
    .from(retentionNotice)
    .where(eq(retentionNotice.academyId, academyId))
    .orderBy(asc(retentionNotice.dueDay), asc(retentionNotice.id))
    .all();
}

/** Announcements with the student's alias, of students whom the viewer may see. */
export function readVisibleNotices(
  db: Database,
  scope: AcademyScope,
): { readonly notice: Notice; readonly alias: string; readonly label: string | null }[] {
  return db.orm
    .select({ notice: retentionNotice, alias: student.alias, label: familyLink.label })
    .from(retentionNotice)
    .innerJoin(student, eq(student.id, retentionNotice.studentId))
    .leftJoin(familyLink, eq(familyLink.id, retentionNotice.linkId))
    .where(and(eq(retentionNotice.academyId, scope.academyId), visible(scope), isNull(student.mergedInto)))
    .orderBy(asc(retentionNotice.dueDay), asc(student.alias), asc(retentionNotice.id))
    .all();
}

/** The latest time that the machine's clock has shown; null: it was never looked at. */
export function readClockSeen(db: Database, { academyId }: Pick<AcademyScope, "academyId">): string | null {
  return db.orm.select({ at: academy.clockSeenAt }).from(academy).where(eq(academy.id, academyId)).get()?.at ?? null;
}
