import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { seenBy, VISIBLE_SQL } from "./visible";

/** A track of a fundamental as it was last judged, with whose it is. */
export interface ComparedAnalysis {
  readonly studentId: string;
  readonly clubGroup: string;
  /** The whole analysis as it is kept. */
  readonly body: string;
}

/** One stretch of a student on a drill, with what is logged of it. */
export interface ComparedAssignment {
  readonly studentId: string;
  readonly drill: string;
  readonly start: string;
  /** Null: it runs. */
  readonly end: string | null;
  /** Of the days on which minutes are logged; null: none are. */
  readonly minutes: number | null;
  readonly days: number;
}

/** The analyses in force of one fundamental, of everybody whom the viewer may see. */
export function readComparedAnalyses(
  db: Database,
  scope: AcademyScope,
  { fundamentalId, policyVersion }: { readonly fundamentalId: string; readonly policyVersion: string },
): ComparedAnalysis[] {
  return db.sqlite
    .prepare<[string, string, string, { seen: string | null }], ComparedAnalysis>(
      `SELECT analysis.student_id AS studentId, club_group AS clubGroup, body
       FROM student JOIN analysis ON analysis.student_id = student.id
       WHERE student.academy_id = ? AND fundamental_id = ? AND policy_version = ? AND data_revision = student.revision
         AND ${VISIBLE_SQL}
       ORDER BY analysis.student_id, club_group`,
    )
    .all(scope.academyId, fundamentalId, policyVersion, seenBy(scope));
}

/** Every drill that was given for a fundamental and stands, by its first day, to whom the viewer may see. */
export function readComparedAssignments(
  db: Database,
  scope: AcademyScope,
  fundamentalId: string,
): ComparedAssignment[] {
  return db.sqlite
    .prepare<[string, string, { seen: string | null }], ComparedAssignment>(
      `SELECT given.student_id AS studentId, drill.name AS drill, given.start_day AS start, given.end_day AS end,
         (SELECT sum(minutes) FROM practice
           WHERE practice.assignment_id = given.id AND practice.voided_at IS NULL) AS minutes,
         (SELECT count(DISTINCT day) FROM practice
           WHERE practice.assignment_id = given.id AND practice.voided_at IS NULL AND minutes IS NOT NULL) AS days
       FROM drill_assignment AS given
       JOIN student ON student.id = given.student_id
       JOIN drill ON drill.id = given.drill_id
       WHERE student.academy_id = ? AND given.fundamental_id = ? AND given.voided_at IS NULL AND ${VISIBLE_SQL}
       ORDER BY given.start_day, given.id`,
    )
    .all(scope.academyId, fundamentalId, seenBy(scope));
}

/** For which fundamentals drills were given to anybody whom the viewer may see, and to how many. */
export function readDrilledFundamentals(
  db: Database,
  scope: AcademyScope,
): { readonly fundamentalId: string; readonly students: number }[] {
  return db.sqlite
    .prepare<[string, { seen: string | null }], { fundamentalId: string; students: number }>(
      `SELECT given.fundamental_id AS fundamentalId, count(DISTINCT given.student_id) AS students
       FROM drill_assignment AS given JOIN student ON student.id = given.student_id
       WHERE student.academy_id = ? AND given.voided_at IS NULL AND ${VISIBLE_SQL}
       GROUP BY given.fundamental_id ORDER BY given.fundamental_id`,
    )
    .all(scope.academyId, seenBy(scope));
}
