import { and, eq, like, or } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { draft } from "../schema-entry";
import { ownDrafts } from "./drafts";

/** In front of the kind of a draft that waits for an undo; behind it stands the kind that it had. */
export const KEPT = "kept ";

/** A draft's own row, and rows that belong to it: their ids begin with its id and a dot. */
export function keptRows(scope: AcademyScope, id: string) {
  return and(ownDrafts(scope), or(eq(draft.id, id), like(draft.id, `${id}.%`)));
}

/** Whether the upload of an import is still kept. */
export function readKept(db: Database, scope: AcademyScope, batchId: string): "kept" | "gone" {
  const found = db.orm
    .select({ id: draft.id })
    .from(draft)
    .where(and(keptRows(scope, batchId), like(draft.kind, `${KEPT}%`)))
    .get();
  return found ? "kept" : "gone";
}
