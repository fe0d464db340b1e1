import { and, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import type { ImportSource } from "../read/import-sources";
import { importSource } from "../schema-entry";

/** In place of what was kept of the source before. */
export function insertImportSource(db: Database, scope: AcademyScope, source: ImportSource): void {
  const { fileName, answers, updatedAt } = source;
  db.orm
    .insert(importSource)
    .values({ ...source, academyId: scope.academyId })
    .onConflictDoUpdate({
      target: [importSource.academyId, importSource.fingerprint],
      set: { fileName, answers, updatedAt },
    })
    .run();
}

/** No source of that fingerprint is no mistake: it may have been forgotten already. */
export function deleteImportSource(db: Database, scope: AcademyScope, fingerprint: string): void {
  db.orm
    .delete(importSource)
    .where(and(eq(importSource.academyId, scope.academyId), eq(importSource.fingerprint, fingerprint)))
    .run();
}
