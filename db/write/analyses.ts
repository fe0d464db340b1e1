import { and, eq, ne, or, sql } from "drizzle-orm";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import type { KeptAnalysis } from "../read/analyses";
import { student } from "../schema";
import { analysis } from "../schema-work";

/** In place of an earlier one of the same track, day and policy. */
export function insertAnalysis(db: Database, scope: StudentScope, made: KeptAnalysis): void {
  const { fundamentalId, clubGroup, asOf, policyVersion, noiseModel, dataRevision, summary, body } = made;
  const kept = { academyId: scope.academyId, noiseModel, dataRevision, summary, body };
  db.orm
    .insert(analysis)
    .values({ studentId: scope.studentId, fundamentalId, clubGroup, asOf, policyVersion, ...kept })
    .onConflictDoUpdate({
      target: [analysis.studentId, analysis.fundamentalId, analysis.clubGroup, analysis.asOf, analysis.policyVersion],
      set: kept,
    })
    .run();
}

/**
 * Drops analyses of another policy or of data that have changed since: they can be computed again.
 *
 * @returns how many
 */
export function deleteStaleAnalyses(db: Database, scope: AcademyScope, policyVersion: string): number {
  const changedSince = sql`${analysis.dataRevision} <> (SELECT ${student.revision} FROM ${student} WHERE ${student.id} = ${analysis.studentId})`;
  return db.orm
    .delete(analysis)
    .where(and(eq(analysis.academyId, scope.academyId), or(ne(analysis.policyVersion, policyVersion), changedSince)))
    .run().changes;
}
