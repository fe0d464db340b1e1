import { and, desc, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { seen } from "../schema-work";

/** One pressing of "seen". */
export type Seen = Omit<typeof seen.$inferSelect, "academyId" | "id">;

/** When a viewer last pressed "seen", and on what; undefined: never. */
export function readLastSeen(db: Database, scope: AcademyScope, viewer: string): Seen | undefined {
  return db.orm
    .select({ viewer: seen.viewer, seenAt: seen.seenAt, asOf: seen.asOf, body: seen.body })
    .from(seen)
    .where(and(eq(seen.academyId, scope.academyId), eq(seen.viewer, viewer)))
    .orderBy(desc(seen.id))
    .get();
}
