import { and, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { draft } from "../schema-work";

/** What was typed or uploaded and isn't saved yet; the body is opaque here. */
export type Draft = Omit<typeof draft.$inferSelect, "academyId">;

/** undefined: there is no such draft in this academy. */
export function readDraft(db: Database, scope: AcademyScope, id: string): Draft | undefined {
  return db.orm
    .select({ id: draft.id, kind: draft.kind, body: draft.body, updatedAt: draft.updatedAt })
    .from(draft)
    .where(and(eq(draft.academyId, scope.academyId), eq(draft.id, id)))
    .get();
}
