import { and, asc, eq } from "drizzle-orm";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { student } from "../schema";
import { analysis } from "../schema-work";
import { seenBy, VISIBLE_SQL, within } from "./visible";

/** What names an analysis in force and the data that it rests on. */
export interface CurrentAnalysis {
  readonly studentId: string;
  readonly fundamentalId: string;
  readonly clubGroup: string;
  readonly dataRevision: number;
  readonly noiseModel: string;
}

const fields = {
  studentId: analysis.studentId,
  fundamentalId: analysis.fundamentalId,
  clubGroup: analysis.clubGroup,
  dataRevision: analysis.dataRevision,
  noiseModel: analysis.noiseModel,
};

function inForce(scope: AcademyScope | StudentScope, policyVersion: string) {
  return and(
    within(scope, analysis.studentId),
    eq(analysis.policyVersion, policyVersion),
    eq(analysis.dataRevision, student.revision),
  );
}

const order = [asc(analysis.studentId), asc(analysis.fundamentalId), asc(analysis.clubGroup)] as const;

/** The whole analyses of one student that rest on the data as they are now. */
export function readCurrentAnalyses(
  db: Database,
  scope: StudentScope,
  policyVersion: string,
): (CurrentAnalysis & { readonly body: string })[] {
  return db.orm
    .select({ ...fields, body: analysis.body })
    .from(analysis)
    .innerJoin(student, eq(student.id, analysis.studentId))
    .where(inForce(scope, policyVersion))
    .orderBy(...order)
    .all();
}

/**
 * The analyses of an academy that rest on the data as they are now, in the fewest words, for thousands of tracks: an entry for
 * each student who has any, with a line for each analysis that is all that names it; each line ends with a line feed.
 */
export function readCurrentLines(
  db: Database,
  scope: AcademyScope,
  policyVersion: string,
): { readonly studentId: string; readonly lines: string }[] {
  return db.sqlite
    .prepare<[string, string, { seen: string | null }], { studentId: string; lines: string }>(
      `SELECT analysis.student_id AS studentId, group_concat(analysis.student_id || ' ' || fundamental_id || ' '
         || club_group || ' ' || data_revision || ' ' || noise_model || char(10), ''
         ORDER BY fundamental_id, club_group) AS lines
       FROM student JOIN analysis ON analysis.student_id = student.id
       WHERE student.academy_id = ? AND policy_version = ? AND data_revision = student.revision AND ${VISIBLE_SQL}
       GROUP BY analysis.student_id ORDER BY analysis.student_id`,
    )
    .all(scope.academyId, policyVersion, seenBy(scope));
}

/** Their small parts. */
export function readCurrentSummaries(
  db: Database,
  scope: AcademyScope,
  policyVersion: string,
): (CurrentAnalysis & { readonly summary: string })[] {
  return db.orm
    .select({ ...fields, summary: analysis.summary })
    .from(analysis)
    .innerJoin(student, eq(student.id, analysis.studentId))
    .where(inForce(scope, policyVersion))
    .orderBy(...order)
    .all();
}

/** Students with readings whose data have changed since they were last judged under that policy, or who never were. */
export function readStaleStudents(db: Database, scope: AcademyScope, policyVersion: string): string[] {
  return db.sqlite
    .prepare<[string, string, { seen: string | null }], string>(
      `SELECT student.id FROM student
       WHERE student.academy_id = ? AND ${VISIBLE_SQL}
         AND EXISTS (SELECT 1 FROM reading WHERE reading.student_id = student.id)
         AND NOT EXISTS (SELECT 1 FROM analysis WHERE analysis.student_id = student.id
           AND analysis.policy_version = ? AND analysis.data_revision = student.revision)
       ORDER BY student.id`,
    )
    .pluck()
    .all(scope.academyId, policyVersion, seenBy(scope));
}
