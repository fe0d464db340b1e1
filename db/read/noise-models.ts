import { and, asc, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { noiseModel } from "../schema-work";

/** A noise model on file; the body is opaque here. */
export type FiledNoiseModel = Omit<typeof noiseModel.$inferSelect, "academyId">;

/** By pool, and within a pool by number. */
export function readNoiseModels(db: Database, scope: AcademyScope, pool?: string): FiledNoiseModel[] {
  return db.orm
    .select({
      pool: noiseModel.pool,
      number: noiseModel.number,
      name: noiseModel.name,
      learnedUpTo: noiseModel.learnedUpTo,
      poolSessions: noiseModel.poolSessions,
      fittedAt: noiseModel.fittedAt,
      body: noiseModel.body,
    })
    .from(noiseModel)
    .where(and(eq(noiseModel.academyId, scope.academyId), pool === undefined ? undefined : eq(noiseModel.pool, pool)))
    .orderBy(asc(noiseModel.pool), asc(noiseModel.number))
    .all();
}
