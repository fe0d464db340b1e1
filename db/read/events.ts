import { asc, eq } from "drizzle-orm";
import type { StudentScope } from "@/lib/domain/scope";
import type { StudentEvent } from "@/lib/domain/student";
import type { Database } from "../client";
import { splitWords } from "../joined-words";
import { event } from "../schema-work";

/** What happened to a student, oldest first. */
export function readEvents(db: Database, scope: StudentScope): StudentEvent[] {
  return db.orm
    .select()
    .from(event)
    .where(eq(event.studentId, scope.studentId))
    .orderBy(asc(event.day), asc(event.id))
    .all()
    .map(({ id, kind, day, note, rebaselines }) => ({ id, kind, day, note, rebaselines: splitWords(rebaselines) }));
}
