import { and, asc, eq, sql } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { preference } from "../schema-entry";

/** What a viewer prefers under a name; undefined: nothing was said. */
export function readPreference(
  db: Database,
  scope: Pick<AcademyScope, "academyId">,
  viewer: string,
  name: string,
): string | undefined {
  return db.orm
    .select({ value: preference.value })
    .from(preference)
    .where(and(eq(preference.academyId, scope.academyId), eq(preference.viewer, viewer), eq(preference.name, name)))
    .get()?.value;
}

/** What a viewer prefers under every name that begins so, by name. */
export function readPreferencesUnder(
  db: Database,
  { academyId }: Pick<AcademyScope, "academyId">,
  viewer: string,
  begins: string,
): { readonly name: string; readonly value: string }[] {
  return db.orm
    .select({ name: preference.name, value: preference.value })
    .from(preference)
    .where(
      and(
        eq(preference.academyId, academyId),
        eq(preference.viewer, viewer),
        eq(sql`substr(${preference.name}, 1, ${begins.length})`, begins),
      ),
    )
    .orderBy(asc(preference.name))
    .all();
}
