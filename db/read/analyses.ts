import { and, asc, eq } from "drizzle-orm";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { analysis, rosterList } from "../schema-work";

/** A kept analysis; summary and body are opaque here. */
export type FiledAnalysis = Omit<typeof analysis.$inferSelect, "academyId">;

/** What names an analysis and the data that it rests on. */
export type AnalysisKey = Pick<
  FiledAnalysis,
  "studentId" | "fundamentalId" | "clubGroup" | "dataRevision" | "noiseModel"
>;

const keyFields = {
  studentId: analysis.studentId,
  fundamentalId: analysis.fundamentalId,
  clubGroup: analysis.clubGroup,
  dataRevision: analysis.dataRevision,
  noiseModel: analysis.noiseModel,
};

const inOrder = [asc(analysis.studentId), asc(analysis.fundamentalId), asc(analysis.clubGroup)];

/** The analyses of one student. */
export function readAnalyses(
  db: Database,
  scope: StudentScope,
  policyVersion: string,
): (AnalysisKey & { readonly body: string })[] {
  return db.orm
    .select({ ...keyFields, body: analysis.body })
    .from(analysis)
    .where(and(eq(analysis.studentId, scope.studentId), eq(analysis.policyVersion, policyVersion)))
    .orderBy(...inOrder)
    .all();
}

/** The names of all analyses of the academy. */
export function readAnalysisKeys(db: Database, scope: AcademyScope, policyVersion: string): AnalysisKey[] {
  return db.orm
    .select(keyFields)
    .from(analysis)
    .where(and(eq(analysis.academyId, scope.academyId), eq(analysis.policyVersion, policyVersion)))
    .orderBy(...inOrder)
    .all();
}

/** The small parts of all analyses of the academy. */
export function readAnalysisSummaries(
  db: Database,
  scope: AcademyScope,
  policyVersion: string,
): (AnalysisKey & { readonly summary: string })[] {
  return db.orm
    .select({ ...keyFields, summary: analysis.summary })
    .from(analysis)
    .where(and(eq(analysis.academyId, scope.academyId), eq(analysis.policyVersion, policyVersion)))
    .orderBy(...inOrder)
    .all();
}

/** Students whose readings have changed since they were last judged under that policy, or who never were. */
export function readStaleStudents(db: Database, scope: AcademyScope, policyVersion: string): string[] {
  return db.sqlite
    .prepare<[string, string], string>(
      `SELECT student.id FROM student
       WHERE student.academy_id = ?
         AND EXISTS (SELECT 1 FROM reading WHERE reading.student_id = student.id)
         AND NOT EXISTS (SELECT 1 FROM analysis WHERE analysis.student_id = student.id
           AND analysis.policy_version = ? AND analysis.data_revision = student.revision)
       ORDER BY student.id`,
    )
    .pluck()
    .all(scope.academyId, policyVersion);
}

/** The kept list of proved changes; undefined: none is kept. */
export function readRosterList(
  db: Database,
  scope: AcademyScope,
  asOf: string,
  policyVersion: string,
): { readonly inputDigest: string; readonly body: string } | undefined {
  return db.orm
    .select({ inputDigest: rosterList.inputDigest, body: rosterList.body })
    .from(rosterList)
    .where(
      and(
        eq(rosterList.academyId, scope.academyId),
        eq(rosterList.asOf, asOf),
        eq(rosterList.policyVersion, policyVersion),
      ),
    )
    .get();
}
