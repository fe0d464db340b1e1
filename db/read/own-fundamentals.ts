import { asc, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { ownFundamental } from "../schema-work";

/** An academy's own fundamental; the definition is opaque here. */
export interface OwnFundamental {
  readonly id: string;
  readonly definition: string;
}

export function readOwnFundamentals(db: Database, scope: AcademyScope): OwnFundamental[] {
  return db.orm
    .select({ id: ownFundamental.id, definition: ownFundamental.definition })
    .from(ownFundamental)
    .where(eq(ownFundamental.academyId, scope.academyId))
    .orderBy(asc(ownFundamental.id))
    .all();
}

/** How many readings there are of each of an academy's own fundamentals, of whomever; those of which nothing was read aren't among them. */
export function readOwnReadingCounts(db: Database, scope: AcademyScope): ReadonlyMap<string, number> {
  const rows = db.sqlite
    .prepare<[string, string], { id: string; readings: number }>(
      `SELECT reading.fundamental_id AS id, count(*) AS readings FROM reading JOIN student ON student.id = reading.student_id
       WHERE student.academy_id = ? AND reading.fundamental_id IN (SELECT id FROM own_fundamental WHERE academy_id = ?)
       GROUP BY reading.fundamental_id`,
    )
    .all(scope.academyId, scope.academyId);
  return new Map(rows.map(({ id, readings }) => [id, readings]));
}
