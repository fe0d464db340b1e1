import { and, eq, like, lt, sql } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { KEPT, keptRows } from "../read/kept-files";
import { draft } from "../schema-entry";

/**
 * Keeps an upload under the id of the import that it became, so that an undo can give it back. Its body isn't copied: it
 * may be tens of megabytes. No such draft is no mistake.
 */
export function updateDraftToKept(
  db: Database,
  scope: AcademyScope,
  kept: { readonly draftId: string; readonly batchId: string; readonly now: string },
): void {
  const { draftId, batchId, now } = kept;
  db.orm
    .update(draft)
    .set({
      id: sql`${batchId} || substr(${draft.id}, ${draftId.length + 1})`,
      kind: sql`${KEPT} || ${draft.kind}`,
      updatedAt: now,
    })
    .where(keptRows(scope, draftId))
    .run();
}

/** Makes the kept upload of an import an upload again, under the import's id. */
export function updateKeptToDraft(db: Database, scope: AcademyScope, batchId: string, now: string): "given" | "gone" {
  const { changes } = db.orm
    .update(draft)
    .set({ kind: sql`substr(${draft.kind}, ${KEPT.length + 1})`, updatedAt: now })
    .where(and(keptRows(scope, batchId), like(draft.kind, `${KEPT}%`)))
    .run();
  return changes > 0 ? "given" : "gone";
}

/**
 * Drops kept uploads of imports that were confirmed before an instant; their imports stay.
 *
 * @returns how many rows
 */
export function deleteKeptFiles(db: Database, scope: AcademyScope, before: string): number {
  const old = and(eq(draft.academyId, scope.academyId), like(draft.kind, `${KEPT}%`), lt(draft.updatedAt, before));
  return inTransaction(db, () => db.orm.delete(draft).where(old).run().changes);
}
