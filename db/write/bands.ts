import type { GoalBand } from "@/lib/domain/goal-band";
import type { AcademyScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { goalBand } from "../schema-work";
import type { Stamp } from "./students";

/**
 * Adds a dated goal band; earlier ones stay. Whoever it may concern is judged anew.
 *
 * @throws RangeError for a built-in band, which lives in the catalogue
 */
export function insertGoalBand(db: Database, scope: AcademyScope, band: GoalBand, { now, newId }: Stamp): string {
  const { from, scope: reach, ...fields } = band;
  if (reach === "built-in") throw new RangeError("a built-in band isn't kept");
  return inTransaction(db, () => {
    const id = newId();
    db.orm
      .insert(goalBand)
      .values({ ...fields, id, academyId: scope.academyId, scope: reach, fromDay: from, createdAt: now })
      .run();
    db.sqlite
      .prepare("UPDATE student SET revision = revision + 1 WHERE academy_id = ? AND (? IS NULL OR id = ?)")
      .run(scope.academyId, band.studentId, band.studentId);
    return id;
  });
}
