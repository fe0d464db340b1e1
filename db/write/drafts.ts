import { and, eq, sql } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { writeQuietly } from "../quiet-writes";
import { type KeptDraft, ownDrafts } from "../read/drafts";
import { draft } from "../schema-entry";

/**
 * In place of the draft of that id.
 *
 * @throws Error when the id is another academy's or somebody else's: nothing is written
 */
export function insertDraft(db: Database, scope: AcademyScope, kept: KeptDraft): void {
  const { id, kind, body, updatedAt, studentId = null } = kept;
  const { academyId, userId } = scope;
  const { changes } = writeQuietly(db, () =>
    db.orm
      .insert(draft)
      .values({ id, academyId, userId, kind, studentId, body, updatedAt })
      .onConflictDoUpdate({
        target: draft.id,
        set: { kind, studentId, body, updatedAt, version: sql`${draft.version} + 1` },
        setWhere: ownDrafts(scope),
      })
      .run(),
  );
  if (changes !== 1) throw new Error(`no such draft: ${id}`);
}

/**
 * Writes a body anew of which what is kept has not changed: the version stays, so that nobody who has seen it is outdated.
 *
 * @throws Error when there is no such draft: nothing is written
 */
export function updateDraftBody(db: Database, scope: AcademyScope, id: string, body: string): void {
  const { changes } = writeQuietly(db, () =>
    db.orm
      .update(draft)
      .set({ body })
      .where(and(eq(draft.id, id), ownDrafts(scope)))
      .run(),
  );
  if (changes !== 1) throw new Error(`no such draft: ${id}`);
}

/** No draft of that id is no mistake: a form may be sent twice. */
export function deleteDraft(db: Database, scope: AcademyScope, id: string): void {
  writeQuietly(db, () =>
    db.orm
      .delete(draft)
      .where(and(eq(draft.id, id), ownDrafts(scope)))
      .run(),
  );
}
