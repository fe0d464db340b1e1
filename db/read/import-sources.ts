import { desc, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { importSource } from "../schema-entry";

/** How files of one source are read; the answers are opaque here. */
export type ImportSource = Omit<typeof importSource.$inferSelect, "academyId">;

/** The last used first. */
export function readImportSources(db: Database, scope: AcademyScope): ImportSource[] {
  return db.orm
    .select({
      fingerprint: importSource.fingerprint,
      fileName: importSource.fileName,
      answers: importSource.answers,
      updatedAt: importSource.updatedAt,
    })
    .from(importSource)
    .where(eq(importSource.academyId, scope.academyId))
    .orderBy(desc(importSource.updatedAt), importSource.fingerprint)
    .all();
}
