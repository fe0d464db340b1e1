import { and, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import type { Draft } from "../read/drafts";
import { draft } from "../schema-work";

/**
 * Keeps a draft in the place of an earlier state of it.
 *
 * @throws Error when a draft of that id belongs to another academy
 */
export function insertDraft(db: Database, scope: AcademyScope, row: Draft): void {
  const { kind, body, updatedAt } = row;
  const { changes } = db.orm
    .insert(draft)
    .values({ ...row, academyId: scope.academyId })
    .onConflictDoUpdate({
      target: draft.id,
      set: { kind, body, updatedAt },
      setWhere: eq(draft.academyId, scope.academyId),
    })
    .run();
  if (changes !== 1) throw new Error(`a draft of another academy: ${row.id}`);
}

export function deleteDraft(db: Database, scope: AcademyScope, id: string): void {
  db.orm
    .delete(draft)
    .where(and(eq(draft.academyId, scope.academyId), eq(draft.id, id)))
    .run();
}
