import { asc, eq } from "drizzle-orm";
import type { FiledEvent, FiledRebaseline } from "@/lib/domain/event-record";
import type { StudentScope } from "@/lib/domain/scope";
import type { PainPlace, StudentEvent } from "@/lib/domain/student";
import type { Database } from "../client";
import { splitWords } from "../joined-words";
import { rebaselineChange } from "../schema-entry";
import { event } from "../schema-work";

/** Everything ever recorded by day, what was taken back too. */
export function readEventLog(db: Database, scope: StudentScope): FiledEvent[] {
  const rows = db.orm
    .select({
      id: event.id,
      kind: event.kind,
      day: event.day,
      endDay: event.endDay,
      place: event.place,
      note: event.note,
      rebaselines: event.rebaselines,
      who: event.who,
      recordedAt: event.recordedAt,
      voidedAt: event.voidedAt,
    })
    .from(event)
    .where(eq(event.studentId, scope.studentId))
    .orderBy(asc(event.day), asc(event.id))
    .all();
  return rows.map((row) => ({
    ...row,
    place: row.place as PainPlace | null,
    rebaselines: splitWords(row.rebaselines),
  }));
}

/** By day; what was taken back happened for nobody: it is drawn nowhere and begins nothing anew. */
export function readEvents(db: Database, scope: StudentScope): StudentEvent[] {
  return readEventLog(db, scope)
    .filter((each) => each.voidedAt === null)
    .map(({ who: _who, recordedAt: _recorded, voidedAt: _voided, ...happened }) => happened);
}

/** Every change at every event of the student, in the order in which they were made. */
export function readRebaselines(db: Database, scope: StudentScope): FiledRebaseline[] {
  const rows = db.orm
    .select({
      id: rebaselineChange.id,
      eventId: rebaselineChange.eventId,
      before: rebaselineChange.before,
      after: rebaselineChange.after,
      who: rebaselineChange.who,
      why: rebaselineChange.why,
      changedAt: rebaselineChange.changedAt,
    })
    .from(rebaselineChange)
    .innerJoin(event, eq(event.id, rebaselineChange.eventId))
    .where(eq(event.studentId, scope.studentId))
    .orderBy(asc(rebaselineChange.id))
    .all();
  return rows.map((row) => ({ ...row, before: splitWords(row.before), after: splitWords(row.after) }));
}
