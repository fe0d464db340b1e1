import { asc, eq } from "drizzle-orm";
import type { StudentScope } from "@/lib/domain/scope";
import type { StudentEvent } from "@/lib/domain/student";
import type { Database } from "../client";
import { splitWords } from "../joined-words";
import { event } from "../schema-work";

/** By day. */
export function readEvents(db: Database, scope: StudentScope): StudentEvent[] {
  const rows = db.orm
    .select({
      id: event.id,
      kind: event.kind,
      day: event.day,
      note: event.note,
      rebaselines: event.rebaselines,
    })
    .from(event)
    .where(eq(event.studentId, scope.studentId))
    .orderBy(asc(event.day), asc(event.id))
    .all();
  return rows.map((row) => ({ ...row, rebaselines: splitWords(row.rebaselines) }));
}
