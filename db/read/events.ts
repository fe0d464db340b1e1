import { asc, eq } from "drizzle-orm";
import type { FiledEvent, FiledRebaseline } from "@/lib/domain/event-record";
import type { PainScope, StudentScope } from "@/lib/domain/scope";
import type { PainPlace, StudentEvent } from "@/lib/domain/student";
import type { Database } from "../client";
import { splitWords } from "../joined-words";
import { rebaselineChange } from "../schema-entry";
import { event } from "../schema-work";

/** A pause as it is told to everybody: that there is one and when, and nothing of what hurts. */
export function veilPain<T extends Pick<StudentEvent, "kind" | "place" | "note">>(event: T): T {
  return event.kind === "injury" ? { ...event, kind: "pause", place: null, note: "" } : event;
}

/**
 * Everything ever recorded by day, what was taken back too.
 *
 * @param pain proof that the viewer may know what hurts; null: of a pause for an injury its days alone are read
 */
export function readEventLog(db: Database, scope: StudentScope, pain: PainScope | null): FiledEvent[] {
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
  const events = rows.map((row) => ({
    ...row,
    place: row.place as PainPlace | null,
    rebaselines: splitWords(row.rebaselines),
  }));
  return pain?.studentId === scope.studentId ? events : events.map(veilPain);
}

/**
 * By day; what was taken back happened for nobody: it is drawn nowhere and begins nothing anew. What a chart, a report or a
 * verdict rests on never says what hurts, whoever looks: it is printed and handed on.
 */
export function readEvents(db: Database, scope: StudentScope): StudentEvent[] {
  return readEventLog(db, scope, null)
    .filter((each) => each.voidedAt === null)
    .map(({ who: _who, recordedAt: _recorded, voidedAt: _voided, ...happened }) => happened);
}

/**
 * Every change at every event of the student, in the order in which they were made.
 *
 * @param pain null: why something began anew at a pause for an injury isn't read, for it may say what hurts
 */
export function readRebaselines(db: Database, scope: StudentScope, pain: PainScope | null): FiledRebaseline[] {
  const rows = db.orm
    .select({
      id: rebaselineChange.id,
      eventId: rebaselineChange.eventId,
      before: rebaselineChange.before,
      after: rebaselineChange.after,
      who: rebaselineChange.who,
      why: rebaselineChange.why,
      changedAt: rebaselineChange.changedAt,
      kind: event.kind,
    })
    .from(rebaselineChange)
    .innerJoin(event, eq(event.id, rebaselineChange.eventId))
    .where(eq(event.studentId, scope.studentId))
    .orderBy(asc(rebaselineChange.id))
    .all();
  const isVeiled = (kind: string): boolean => kind === "injury" && pain?.studentId !== scope.studentId;
  return rows.map(({ kind, why, ...row }) => ({
    ...row,
    why: isVeiled(kind) ? "" : why,
    before: splitWords(row.before),
    after: splitWords(row.after),
  }));
}
