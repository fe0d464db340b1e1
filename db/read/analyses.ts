import { and, asc, eq } from "drizzle-orm";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { student } from "../schema";
import { analysis } from "../schema-work";

/** What an analysis is of. */
export interface AnalysisKey {
  readonly fundamentalId: string;
  readonly clubGroup: string;
  readonly asOf: string;
  readonly policyVersion: string;
}

/** What an analysis rests on; stale when the student's revision has grown past it. */
export interface AnalysisBasis {
  readonly noiseModel: string;
  readonly dataRevision: number;
}

/** A kept analysis; summary and body are opaque here. */
export interface KeptAnalysis extends AnalysisKey, AnalysisBasis {
  readonly summary: string;
  readonly body: string;
}

/** The small part of a kept analysis, with the revision that the student's data have now. */
export interface AnalysisSummary extends AnalysisBasis {
  readonly studentId: string;
  readonly fundamentalId: string;
  readonly clubGroup: string;
  readonly studentRevision: number;
  readonly summary: string;
}

/** Fresh or stale: the caller compares its revision. */
export function readAnalysis(db: Database, scope: StudentScope, key: AnalysisKey): KeptAnalysis | undefined {
  return db.orm
    .select({
      fundamentalId: analysis.fundamentalId,
      clubGroup: analysis.clubGroup,
      asOf: analysis.asOf,
      policyVersion: analysis.policyVersion,
      noiseModel: analysis.noiseModel,
      dataRevision: analysis.dataRevision,
      summary: analysis.summary,
      body: analysis.body,
    })
    .from(analysis)
    .where(
      and(
        eq(analysis.studentId, scope.studentId),
        eq(analysis.fundamentalId, key.fundamentalId),
        eq(analysis.clubGroup, key.clubGroup),
        eq(analysis.asOf, key.asOf),
        eq(analysis.policyVersion, key.policyVersion),
      ),
    )
    .get();
}

/** By student, fundamental and club group. */
export function readAnalysisSummaries(
  db: Database,
  scope: AcademyScope,
  asOf: string,
  policyVersion: string,
): AnalysisSummary[] {
  return db.orm
    .select({
      studentId: analysis.studentId,
      fundamentalId: analysis.fundamentalId,
      clubGroup: analysis.clubGroup,
      noiseModel: analysis.noiseModel,
      dataRevision: analysis.dataRevision,
      studentRevision: student.revision,
      summary: analysis.summary,
    })
    .from(analysis)
    .innerJoin(student, eq(student.id, analysis.studentId))
    .where(
      and(
        eq(student.academyId, scope.academyId),
        eq(analysis.academyId, scope.academyId),
        eq(analysis.asOf, asOf),
        eq(analysis.policyVersion, policyVersion),
      ),
    )
    .orderBy(asc(analysis.studentId), asc(analysis.fundamentalId), asc(analysis.clubGroup))
    .all();
}
