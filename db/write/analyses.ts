import { and, eq, ne } from "drizzle-orm";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import type { FiledAnalysis } from "../read/analyses";
import { analysis, rosterList } from "../schema-work";

/** Keeps an analysis in the place of an older one of the same day and policy. */
export function insertAnalysis(db: Database, scope: StudentScope, row: Omit<FiledAnalysis, "studentId">): void {
  const values = { ...row, studentId: scope.studentId, academyId: scope.academyId };
  const { studentId, fundamentalId, clubGroup, asOf, policyVersion } = analysis;
  db.orm
    .insert(analysis)
    .values(values)
    .onConflictDoUpdate({ target: [studentId, fundamentalId, clubGroup, asOf, policyVersion], set: values })
    .run();
}

/** Throws away a student's analyses that rest on other data than now. */
export function deleteStaleAnalyses(db: Database, scope: StudentScope, revision: number): void {
  db.orm
    .delete(analysis)
    .where(and(eq(analysis.studentId, scope.studentId), ne(analysis.dataRevision, revision)))
    .run();
}

/** Keeps the roster's list in the place of an older one. */
export function insertRosterList(
  db: Database,
  scope: AcademyScope,
  row: { readonly asOf: string; readonly policyVersion: string; readonly inputDigest: string; readonly body: string },
): void {
  const values = { ...row, academyId: scope.academyId };
  const { academyId, asOf, policyVersion } = rosterList;
  db.orm
    .insert(rosterList)
    .values(values)
    .onConflictDoUpdate({ target: [academyId, asOf, policyVersion], set: values })
    .run();
}
