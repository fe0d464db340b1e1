import { asc, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { academy } from "../schema";

/** An academy as kept. */
export type Academy = typeof academy.$inferSelect;

/** @throws Error when the academy isn't there: a proven scope names one that is */
export function readAcademy(db: Database, scope: AcademyScope): Academy {
  const row = db.orm.select().from(academy).where(eq(academy.id, scope.academyId)).get();
  if (!row) throw new Error(`no such academy: ${scope.academyId}`);
  return row;
}

/** For the gate, which mints the scopes. */
export function readAcademyIds(db: Database): string[] {
  return db.orm
    .select({ id: academy.id })
    .from(academy)
    .orderBy(asc(academy.createdAt), asc(academy.id))
    .all()
    .map((row) => row.id);
}
