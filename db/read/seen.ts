import { and, desc, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { seen } from "../schema-work";

/** What a viewer pressed "seen" on; the body is opaque here. */
export type Seen = Omit<typeof seen.$inferSelect, "id" | "academyId">;

/** The latest in the order of pressing, whatever a clock said; undefined: never pressed. */
export function readLastSeen(db: Database, scope: AcademyScope, viewer: string): Seen | undefined {
  return db.orm
    .select({ viewer: seen.viewer, seenAt: seen.seenAt, asOf: seen.asOf, body: seen.body })
    .from(seen)
    .where(and(eq(seen.academyId, scope.academyId), eq(seen.viewer, viewer)))
    .orderBy(desc(seen.id))
    .limit(1)
    .get();
}
