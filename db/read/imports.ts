import { desc, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { importBatch } from "../schema";

/** One import that was written. */
export type ImportBatch = Omit<typeof importBatch.$inferSelect, "academyId">;

/** The academy's imports, latest first. */
export function readImportBatches(db: Database, scope: AcademyScope): ImportBatch[] {
  const { academyId, ...fields } = importBatch;
  const { id, fileName, contentHash, form, rows, readings, answers, createdAt } = fields;
  return db.orm
    .select({ id, fileName, contentHash, form, rows, readings, answers, createdAt })
    .from(importBatch)
    .where(eq(academyId, scope.academyId))
    .orderBy(desc(createdAt), desc(id))
    .all();
}
