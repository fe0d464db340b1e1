import { and, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { preference } from "../schema-entry";

/** What a viewer prefers under a name; undefined: nothing was said. */
export function readPreference(db: Database, scope: AcademyScope, viewer: string, name: string): string | undefined {
  return db.orm
    .select({ value: preference.value })
    .from(preference)
    .where(and(eq(preference.academyId, scope.academyId), eq(preference.viewer, viewer), eq(preference.name, name)))
    .get()?.value;
}
