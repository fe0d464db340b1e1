import { and, eq } from "drizzle-orm";
import type { StudentScope } from "@/lib/domain/scope";
import type { StudentEvent } from "@/lib/domain/student";
import { type Database, inTransaction } from "../client";
import { joinWords, splitWords } from "../joined-words";
import { rebaselineChange } from "../schema-entry";
import { event } from "../schema-work";
import { updateRevision } from "./students";

/** Who did it and when. */
export interface RecordedBy {
  readonly who: string;
  /** ISO instant. */
  readonly now: string;
}

/** `by`: left out where nobody recorded it by hand. */
export function insertEvent(db: Database, scope: StudentScope, happened: StudentEvent, by?: RecordedBy): void {
  const { id, kind, day, endDay = null, place = null, note, rebaselines } = happened;
  inTransaction(db, () => {
    updateRevision(db, scope);
    db.orm
      .insert(event)
      .values({
        ...{ id, studentId: scope.studentId, kind, day, endDay, place, note },
        ...{ rebaselines: joinWords(rebaselines), who: by?.who ?? "", recordedAt: by?.now ?? null },
      })
      .run();
  });
}

/**
 * Takes an event back, or puts it back as it was. The row stays; taken back, no verdict and no chart knows of it.
 *
 * @param voidedAt the hour at which it is taken back; null: it is put back
 * @returns `unchanged`: no such event of the student, or it stood so already; nothing was written
 */
export function updateEventVoided(
  db: Database,
  scope: StudentScope,
  { eventId, voidedAt }: { readonly eventId: string; readonly voidedAt: string | null },
): { readonly kind: "updated" | "unchanged" } {
  return inTransaction(db, () => {
    const { changes } = db.sqlite
      .prepare<[string | null, string, string, string | null]>(
        "UPDATE event SET voided_at = ? WHERE id = ? AND student_id = ? AND (voided_at IS NULL) <> (? IS NULL)",
      )
      .run(voidedAt, eventId, scope.studentId, voidedAt);
    if (changes === 0) return { kind: "unchanged" };
    updateRevision(db, scope);
    return { kind: "updated" };
  });
}

/**
 * Says which tracks begin anew at an event; what held before is kept beside it, so that another change undoes it.
 *
 * @returns `unchanged`: no such event that stands, or it says so already; nothing was written
 */
export function insertRebaseline(
  db: Database,
  scope: StudentScope,
  change: RecordedBy & { readonly eventId: string; readonly after: readonly string[]; readonly why: string },
): { readonly kind: "changed" | "unchanged" } {
  const { eventId, who, why, now } = change;
  return inTransaction(db, () => {
    const row = db.orm
      .select({ rebaselines: event.rebaselines, voidedAt: event.voidedAt })
      .from(event)
      .where(and(eq(event.id, eventId), eq(event.studentId, scope.studentId)))
      .get();
    if (!row || row.voidedAt !== null) return { kind: "unchanged" };
    const held = splitWords(row.rebaselines);
    if (held.length === change.after.length && held.every((id) => change.after.includes(id)))
      return { kind: "unchanged" };
    const after = joinWords(change.after);
    updateRevision(db, scope);
    db.orm.update(event).set({ rebaselines: after }).where(eq(event.id, eventId)).run();
    db.orm.insert(rebaselineChange).values({ eventId, before: row.rebaselines, after, who, why, changedAt: now }).run();
    return { kind: "changed" };
  });
}

/** What an event that is mended said of pain goes on to the pause that stands in for it. */
export function updatePainFrom(
  db: Database,
  scope: StudentScope,
  { from, to }: { readonly from: string; readonly to: string },
): void {
  db.sqlite
    .prepare<{ from: string; to: string; studentId: string }>(
      `UPDATE event SET kind = 'injury', place = wrong.place
       FROM (SELECT place FROM event WHERE id = :from AND student_id = :studentId AND kind = 'injury') AS wrong
       WHERE id = :to AND student_id = :studentId AND kind = 'pause'`,
    )
    .run({ from, to, studentId: scope.studentId });
}
