import { and, eq, sql } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import type { OwnFundamental } from "../read/own-fundamentals";
import { student } from "../schema";
import { ownFundamental } from "../schema-work";

/** `exists`: the academy has a fundamental of that id; it stays as it is. */
export function insertOwnFundamental(
  db: Database,
  scope: AcademyScope,
  { id, definition }: OwnFundamental,
  now: string,
): { readonly kind: "inserted" | "exists" } {
  const { changes } = db.orm
    .insert(ownFundamental)
    .values({ academyId: scope.academyId, id, definition, createdAt: now })
    .onConflictDoNothing()
    .run();
  return { kind: changes === 1 ? "inserted" : "exists" };
}

/**
 * Puts another definition in the place of one that was in sight; the data of every student of whom it was read count as changed.
 *
 * @param seen the definition as it was in sight, word for word
 * @returns `stale`: it was another one by now, or there is none of that id; nothing was written
 */
export function updateOwnFundamental(
  db: Database,
  scope: AcademyScope,
  { id, definition, seen }: OwnFundamental & { readonly seen: string },
): { readonly kind: "updated" | "stale" } {
  return inTransaction(db, () => {
    const here = and(eq(ownFundamental.academyId, scope.academyId), eq(ownFundamental.id, id));
    const { changes } = db.orm
      .update(ownFundamental)
      .set({ definition })
      .where(and(here, eq(ownFundamental.definition, seen)))
      .run();
    if (changes === 0) return { kind: "stale" };
    db.orm
      .update(student)
      .set({ revision: sql`${student.revision} + 1` })
      .where(
        and(
          eq(student.academyId, scope.academyId),
          sql`${student.id} IN (SELECT student_id FROM reading WHERE fundamental_id = ${id})`,
        ),
      )
      .run();
    return { kind: "updated" };
  });
}
