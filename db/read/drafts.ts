import { and, desc, eq, inArray, isNull, like, or, sql } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { draft } from "../schema-entry";

/** What was typed or uploaded and isn't saved yet; the body is opaque here. */
export type Draft = Omit<typeof draft.$inferSelect, "academyId">;

/** A draft to be kept; `studentId`: whose record it is about. */
export type KeptDraft = Omit<Draft, "version" | "studentId" | "userId"> & { readonly studentId?: string | null };

const fields = {
  id: draft.id,
  kind: draft.kind,
  studentId: draft.studentId,
  body: draft.body,
  version: draft.version,
  updatedAt: draft.updatedAt,
  userId: draft.userId,
};

/** Nobody reads what somebody else is typing; and what is about a student whom one may not see any more, nobody either. */
export function ownDrafts(scope: AcademyScope) {
  const here = eq(draft.academyId, scope.academyId);
  const typed = scope.userId === null ? here : and(here, eq(draft.userId, scope.userId));
  if (scope.students === "all") return typed;
  return and(typed, or(isNull(draft.studentId), inArray(draft.studentId, [...scope.students])));
}

export function readDraft(db: Database, scope: AcademyScope, id: string): Draft | undefined {
  return db.orm
    .select(fields)
    .from(draft)
    .where(and(eq(draft.id, id), ownDrafts(scope)))
    .get();
}

/** Whether an id is a draft's that the viewer has not, or has not any more: nothing of the viewer's is kept under it. */
export function isOthersDraft(db: Database, scope: AcademyScope, id: string): boolean {
  const held = db.orm.select({ id: draft.id }).from(draft).where(eq(draft.id, id)).get();
  return held !== undefined && readDraft(db, scope, id) === undefined;
}

/**
 * The drafts whose kind begins with a word, the latest kept first; those of one hour in the order of their ids.
 *
 * @param begin letters and `-` only: they stand for themselves
 */
export function readDraftsOf(db: Database, scope: AcademyScope, begin: string): Draft[] {
  return db.orm
    .select(fields)
    .from(draft)
    .where(and(ownDrafts(scope), like(draft.kind, `${begin}%`)))
    .orderBy(desc(draft.updatedAt), desc(draft.id))
    .all();
}

/** Characters of a draft's body, without reading it; 0: there is none. */
export function readDraftLength(db: Database, scope: AcademyScope, id: string): number {
  const found = db.orm
    .select({ length: sql<number>`length(${draft.body})` })
    .from(draft)
    .where(and(eq(draft.id, id), ownDrafts(scope)))
    .get();
  return found?.length ?? 0;
}
