import type { StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import type { LookNoise } from "../read/looks";

/**
 * Ties looks to noise models; a look that has one keeps it.
 *
 * @returns number of looks that got one
 * @throws Error for a session of another student: nothing is written
 */
export function insertLookNoise(db: Database, scope: StudentScope, looks: readonly LookNoise[]): number {
  return inTransaction(db, () => {
    const owned = db.sqlite.prepare<[string, string], 1>("SELECT 1 FROM session WHERE id = ? AND student_id = ?");
    const insert = db.sqlite.prepare<[LookNoise & { studentId: string }]>(
      `INSERT INTO look_noise (student_id, session_id, fundamental_id, club_group, noise_model_name)
       VALUES (:studentId, :sessionId, :fundamentalId, :clubGroup, :noiseModelName) ON CONFLICT DO NOTHING`,
    );
    let written = 0;
    for (const look of looks) {
      if (!owned.get(look.sessionId, scope.studentId)) throw new Error(`no such session: ${look.sessionId}`);
      written += insert.run({ ...look, studentId: scope.studentId }).changes;
    }
    return written;
  });
}
