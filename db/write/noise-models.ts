import { and, eq, max } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import type { FiledNoiseModel } from "../read/noise-models";
import { noiseModel } from "../schema-work";

/** A fitted model that has no number yet; its name may hold the number. */
export type NewNoiseModel = Omit<FiledNoiseModel, "number" | "name"> & {
  readonly nameOf: (number: number) => string;
};

/** Takes the next number of its pool. There is no way to change one: a new model rewrites no past look. */
export function insertNoiseModel(db: Database, scope: AcademyScope, fitted: NewNoiseModel): FiledNoiseModel {
  const { nameOf, pool, learnedUpTo, poolSessions, fittedAt, body } = fitted;
  return inTransaction(db, () => {
    const { academyId } = scope;
    const last = db.orm
      .select({ number: max(noiseModel.number) })
      .from(noiseModel)
      .where(and(eq(noiseModel.academyId, academyId), eq(noiseModel.pool, pool)))
      .get();
    const number = (last?.number ?? 0) + 1;
    const row = { pool, number, name: nameOf(number), learnedUpTo, poolSessions, fittedAt, body };
    db.orm
      .insert(noiseModel)
      .values({ academyId, ...row })
      .run();
    return row;
  });
}
