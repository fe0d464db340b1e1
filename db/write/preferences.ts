import { and, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { writeQuietly } from "../quiet-writes";
import { preference } from "../schema-entry";

/** In place of what the viewer preferred under that name before. */
export function insertPreference(
  db: Database,
  { academyId }: Pick<AcademyScope, "academyId">,
  kept: { readonly viewer: string; readonly name: string; readonly value: string },
): void {
  writeQuietly(db, () =>
    db.orm
      .insert(preference)
      .values({ academyId, ...kept })
      .onConflictDoUpdate({
        target: [preference.academyId, preference.viewer, preference.name],
        set: { value: kept.value },
      })
      .run(),
  );
}

/** Lets go of what was kept under a name; nothing kept is no mistake. */
export function deletePreference(
  db: Database,
  { academyId }: Pick<AcademyScope, "academyId">,
  viewer: string,
  name: string,
): void {
  writeQuietly(db, () =>
    db.orm
      .delete(preference)
      .where(and(eq(preference.academyId, academyId), eq(preference.viewer, viewer), eq(preference.name, name)))
      .run(),
  );
}
