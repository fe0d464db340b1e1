import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import type { FiledNoiseModel } from "../read/noise";
import { lookNoise, noiseModel } from "../schema-work";

/** Adds a noise model under the next number of its pool and names it by both. There is no way to change one. */
export function insertNoiseModel(
  db: Database,
  scope: AcademyScope,
  row: Omit<FiledNoiseModel, "number" | "name">,
): string {
  return inTransaction(db, () => {
    const last = db.sqlite
      .prepare<[string, string], number | null>("SELECT max(number) FROM noise_model WHERE academy_id = ? AND pool = ?")
      .pluck()
      .get(scope.academyId, row.pool);
    const number = (last ?? -1) + 1;
    const name = `${row.pool}#${number}`;
    db.orm
      .insert(noiseModel)
      .values({ ...row, academyId: scope.academyId, number, name })
      .run();
    return name;
  });
}

/** Gives a look its noise model; a look that has one keeps it. */
export function insertLookNoise(
  db: Database,
  scope: StudentScope,
  look: { readonly sessionId: string; readonly fundamentalId: string; readonly noiseModelName: string },
): void {
  db.orm
    .insert(lookNoise)
    .values({ ...look, studentId: scope.studentId })
    .onConflictDoNothing()
    .run();
}
