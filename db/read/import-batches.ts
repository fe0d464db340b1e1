import { and, desc, eq, isNull, sql } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { importBatch } from "../schema";

/** One import as kept; `answers` lists what was changed, guessed or set aside, opaque here. */
export type ImportBatch = Omit<typeof importBatch.$inferSelect, "academyId">;

const fields = {
  id: importBatch.id,
  fileName: importBatch.fileName,
  contentHash: importBatch.contentHash,
  form: importBatch.form,
  rows: importBatch.rows,
  readings: importBatch.readings,
  answers: importBatch.answers,
  createdAt: importBatch.createdAt,
  door: importBatch.door,
  undoneAt: importBatch.undoneAt,
  undoneBy: importBatch.undoneBy,
};

/** Latest first. */
export function readImportBatches(db: Database, scope: AcademyScope): ImportBatch[] {
  return db.orm
    .select(fields)
    .from(importBatch)
    .where(eq(importBatch.academyId, scope.academyId))
    .orderBy(desc(importBatch.createdAt), desc(sql`rowid`))
    .all();
}

/** The import that brought this very content and wasn't taken back, if there was one. */
export function readImportBatch(db: Database, scope: AcademyScope, contentHash: string): ImportBatch | undefined {
  return db.orm
    .select(fields)
    .from(importBatch)
    .where(
      and(
        eq(importBatch.academyId, scope.academyId),
        eq(importBatch.contentHash, contentHash),
        isNull(importBatch.undoneAt),
      ),
    )
    .get();
}
