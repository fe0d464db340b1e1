import { and, desc, eq, sql } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { erasure } from "../schema-privacy";

/** That somebody was erased, and nothing by which they could be found. */
export type Erasure = typeof erasure.$inferSelect;

/** All erasures of an academy, the latest first. */
export function readErasures(db: Database, { academyId }: AcademyScope): Erasure[] {
  return db.orm.select().from(erasure).where(eq(erasure.academyId, academyId)).orderBy(desc(erasure.erasedAt)).all();
}

/** One of them; undefined: the academy has none of that id. */
export function readErasure(db: Database, { academyId }: AcademyScope, id: string): Erasure | undefined {
  return db.orm
    .select()
    .from(erasure)
    .where(and(eq(erasure.academyId, academyId), eq(erasure.id, id)))
    .get();
}

/** How many there are. */
export function readErasureCount(db: Database, { academyId }: AcademyScope): number {
  const found = db.orm
    .select({ count: sql<number>`count(*)` })
    .from(erasure)
    .where(eq(erasure.academyId, academyId))
    .get();
  return found?.count ?? 0;
}
