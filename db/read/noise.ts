import { and, asc, eq } from "drizzle-orm";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { lookNoise, noiseModel } from "../schema-work";

/** A noise model as kept; the body is opaque here. */
export type FiledNoiseModel = Omit<typeof noiseModel.$inferSelect, "academyId">;

const fields = {
  pool: noiseModel.pool,
  number: noiseModel.number,
  name: noiseModel.name,
  learnedUpTo: noiseModel.learnedUpTo,
  poolSessions: noiseModel.poolSessions,
  fittedAt: noiseModel.fittedAt,
  body: noiseModel.body,
};

/** The academy's noise models, of one pool or of all, oldest first. */
export function readNoiseModels(db: Database, scope: AcademyScope, pool?: string): FiledNoiseModel[] {
  const mine = eq(noiseModel.academyId, scope.academyId);
  return db.orm
    .select(fields)
    .from(noiseModel)
    .where(pool === undefined ? mine : and(mine, eq(noiseModel.pool, pool)))
    .orderBy(asc(noiseModel.pool), asc(noiseModel.number))
    .all();
}

/** With which model each of a student's looks is said. */
export function readLookNoise(
  db: Database,
  scope: StudentScope,
): { readonly sessionId: string; readonly fundamentalId: string; readonly noiseModelName: string }[] {
  const { sessionId, fundamentalId, noiseModelName } = lookNoise;
  return db.orm
    .select({ sessionId, fundamentalId, noiseModelName })
    .from(lookNoise)
    .where(eq(lookNoise.studentId, scope.studentId))
    .all();
}
