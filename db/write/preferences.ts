import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { preference } from "../schema-entry";

/** In place of what the viewer preferred under that name before. */
export function insertPreference(
  db: Database,
  scope: AcademyScope,
  kept: { readonly viewer: string; readonly name: string; readonly value: string },
): void {
  db.orm
    .insert(preference)
    .values({ academyId: scope.academyId, ...kept })
    .onConflictDoUpdate({
      target: [preference.academyId, preference.viewer, preference.name],
      set: { value: kept.value },
    })
    .run();
}
