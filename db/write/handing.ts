import type { StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { insertEvent, updateEventVoided } from "./events";
import { insertCharge, updateChargeEnded } from "./people";
import { updateRevision } from "./students";

/** A student handed to another coach, or covered by one. */
export interface NewHanding {
  /** Of the charge, and of the event that dates the change of reader. */
  readonly id: string;
  readonly kind: "own" | "cover";
  readonly coachId: string;
  /** The other coach's name, who reads from then on. */
  readonly coach: string;
  /** Null: the student was in nobody's charge before, and no reader changes. */
  readonly fromCoachId: string | null;
  readonly note: string | null;
  readonly fromDay: string;
  /** The day before the first. */
  readonly dayBefore: string;
  readonly untilDay: string | null;
  /** Ids of the charges that end with the day before; none for a cover. */
  readonly ends: readonly string[];
  /** Ids of the covers that reach further than the day before, and end with it; none for a cover. */
  readonly cutsCovers: readonly string[];
  /** Whether it begins after today, so that it may be taken back. */
  readonly isPlanned: boolean;
  /** Whose forms about the student go to the other coach at once. */
  readonly draftsOf: readonly string[];
  readonly who: string;
  /** ISO instants: of the entry, and as the academy's records bear it. */
  readonly recordedAt: string;
  readonly now: string;
}

/**
 * Gives forms to another person. The version stays: nothing of what is kept has changed, so no window is outdated; what two
 * windows hold goes along whole.
 */
export function updateDraftOwners(db: Database, ids: readonly string[], userId: string): number {
  const row = db.sqlite.prepare<[string, string]>("UPDATE draft SET user_id = ? WHERE id = ?");
  return inTransaction(db, () => ids.reduce((sum, id) => sum + row.run(userId, id).changes, 0));
}

// A form that hands over is its author's: sent, it is done with.
const OPEN_FORMS = `SELECT id FROM draft WHERE student_id = ? AND user_id = ? AND kind NOT LIKE 'handing-form %'`;

/**
 * The event of a cover that was cut: one that never begins is taken back. While the hand-over may be taken back, the event
 * keeps the last day as it was said, from which the cover is restored then.
 */
function cutCoverEvent(
  db: Database,
  scope: StudentScope,
  coverId: string,
  { dayBefore, isPlanned, now }: NewHanding,
): void {
  const at = db.sqlite.prepare<[string, string], { day: string }>(
    "SELECT day FROM event WHERE id = ? AND student_id = ?",
  );
  const begins = at.get(coverId, scope.studentId)?.day;
  if (begins === undefined) return;
  if (begins > dayBefore) updateEventVoided(db, scope, { eventId: coverId, voidedAt: now });
  else if (!isPlanned)
    db.sqlite
      .prepare<[string, string, string]>("UPDATE event SET end_day = ? WHERE id = ? AND student_id = ?")
      .run(dayBefore, coverId, scope.studentId);
}

/**
 * Hands a student over or has them covered, in one transaction: the charges before end, the other's begins, the change of
 * reader is dated, and unfinished forms go along.
 *
 * @returns forms that went along now
 */
export function insertHanding(db: Database, scope: StudentScope, made: NewHanding): number {
  const { id, kind, coachId, fromCoachId, note, fromDay, untilDay, who, recordedAt } = made;
  const { studentId } = scope;
  return inTransaction(db, () => {
    const end = db.sqlite.prepare<[string, string, string]>(
      "UPDATE charge SET until_day = ? WHERE id = ? AND student_id = ? AND ended_at IS NULL",
    );
    for (const before of [...made.ends, ...made.cutsCovers]) end.run(made.dayBefore, before, studentId);
    for (const coverId of made.cutsCovers) cutCoverEvent(db, scope, coverId, made);
    insertCharge(db, {
      ...{ id, studentId, coachId, kind, fromCoachId, note, fromDay, untilDay, who, recordedAt },
    });
    if (fromCoachId !== null) {
      const changed = { id, kind: "reader-change", day: fromDay, endDay: untilDay, note: made.coach } as const;
      insertEvent(db, scope, { ...changed, rebaselines: [] }, { who, now: made.now });
    }
    const forms = db.sqlite.prepare<[string, string], string>(OPEN_FORMS).pluck();
    return made.draftsOf.reduce((sum, userId) => sum + updateDraftOwners(db, forms.all(studentId, userId), coachId), 0);
  });
}

/**
 * Takes a hand-over or a cover back that has not begun, as if it had never been planned; the rows stay.
 *
 * @param back.reopens ids of the charges that it would have ended
 * @param back.restores ids of the covers that it may have cut: each ends again as its event says
 */
export function updateHandingBack(
  db: Database,
  scope: StudentScope,
  back: {
    readonly id: string;
    readonly reopens: readonly string[];
    readonly restores: readonly string[];
    readonly who: string;
    readonly recordedAt: string;
    readonly now: string;
  },
): "taken-back" | "unchanged" {
  return inTransaction(db, () => {
    if (updateChargeEnded(db, back.id, { endedAt: back.recordedAt, endedBy: back.who }) === "unchanged")
      return "unchanged";
    const reopen = db.sqlite.prepare<[string, string]>(
      "UPDATE charge SET until_day = NULL WHERE id = ? AND student_id = ? AND ended_at IS NULL",
    );
    for (const id of back.reopens) reopen.run(id, scope.studentId);
    const restore = db.sqlite.prepare<[string, string]>(
      `UPDATE charge SET until_day = event.end_day FROM event
       WHERE event.id = charge.id AND charge.id = ? AND charge.student_id = ? AND ended_at IS NULL
         AND event.student_id = charge.student_id AND (event.end_day IS NULL OR event.end_day > until_day)`,
    );
    for (const id of back.restores)
      if (restore.run(id, scope.studentId).changes > 0) updateEventVoided(db, scope, { eventId: id, voidedAt: null });
    updateEventVoided(db, scope, { eventId: back.id, voidedAt: back.now });
    return "taken-back";
  });
}

/** Ends a cover that runs, at once: the other reads no more after today. */
export function updateCoverEnded(
  db: Database,
  scope: StudentScope,
  ended: { readonly id: string; readonly today: string; readonly who: string; readonly recordedAt: string },
): "ended" | "unchanged" {
  return inTransaction(db, () => {
    if (updateChargeEnded(db, ended.id, { endedAt: ended.recordedAt, endedBy: ended.who }) === "unchanged")
      return "unchanged";
    db.sqlite
      .prepare<[string, string, string]>("UPDATE event SET end_day = ? WHERE id = ? AND student_id = ?")
      .run(ended.today, ended.id, scope.studentId);
    updateRevision(db, scope);
    return "ended";
  });
}
