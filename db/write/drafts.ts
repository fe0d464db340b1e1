import { and, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import type { Draft } from "../read/drafts";
import { draft } from "../schema-work";

/**
 * In place of the draft of that id.
 *
 * @throws Error when the id is another academy's: nothing is written
 */
export function insertDraft(db: Database, scope: AcademyScope, { id, kind, body, updatedAt }: Draft): void {
  const { academyId } = scope;
  const { changes } = db.orm
    .insert(draft)
    .values({ id, academyId, kind, body, updatedAt })
    .onConflictDoUpdate({ target: draft.id, set: { kind, body, updatedAt }, setWhere: eq(draft.academyId, academyId) })
    .run();
  if (changes !== 1) throw new Error(`no such draft: ${id}`);
}

/** No draft of that id is no mistake: a form may be sent twice. */
export function deleteDraft(db: Database, scope: AcademyScope, id: string): void {
  db.orm
    .delete(draft)
    .where(and(eq(draft.id, id), eq(draft.academyId, scope.academyId)))
    .run();
}
