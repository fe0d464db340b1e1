import { and, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { draft } from "../schema-work";

/** What was typed or uploaded and isn't saved yet; the body is opaque here. */
export type Draft = Omit<typeof draft.$inferSelect, "academyId">;

export function readDraft(db: Database, scope: AcademyScope, id: string): Draft | undefined {
  return db.orm
    .select({ id: draft.id, kind: draft.kind, body: draft.body, updatedAt: draft.updatedAt })
    .from(draft)
    .where(and(eq(draft.id, id), eq(draft.academyId, scope.academyId)))
    .get();
}
