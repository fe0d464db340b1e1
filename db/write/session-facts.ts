import type { ColumnValue, RowState } from "@/lib/domain/record-change";
import type { StudentScope } from "@/lib/domain/scope";
import type { SessionFacts } from "@/lib/domain/session-change";
import type { EnteredCapture } from "@/lib/domain/session-entry";
import { type Database, inTransaction } from "../client";
import { isBeingRead } from "../read/being-read";
import { freeSequence } from "./moved-rows";
import { type ChangeNote, writeRecordChange } from "./record-changes";

/**
 * `unchanged`: everything was so already. `reader-has-read`: the new reader has first readings of these swings, beside which
 * others can't become theirs. `being-read`: films of the session are being read back by the reader who was named. Nothing
 * was written.
 */
export type FactsUpdate =
  | { readonly kind: "changed"; readonly changeId: number }
  | { readonly kind: "unchanged" | "unknown-session" | "reader-has-read" | "being-read" };

type Columns = Record<string, ColumnValue>;

function sessionColumns(facts: SessionFacts): Columns {
  return {
    day: facts.day,
    said_club_group: facts.clubGroup,
    club: facts.club,
    circumstance: facts.circumstance,
    aid: facts.aid,
    days_since_practice: facts.daysSincePractice,
    note: facts.note,
    solid: facts.solid,
    balls: facts.balls,
    set_aside_reason: facts.setAsideReason,
    reader: facts.reader,
  };
}

function captureColumns({ seen, ...capture }: EnteredCapture): Columns {
  return {
    placement: capture.placement,
    placement_label: capture.placementLabel,
    squareness: capture.squareness,
    off_by: capture.offBy,
    pointing_stick_lean: seen.pointingStickLean,
    across_stick_slope: seen.acrossStickSlope,
    plumb_lean: seen.plumbLean,
    lens_height_cm: seen.lensHeightCm,
    hands_height_cm: seen.handsHeightCm,
    distance_cm: seen.distanceCm,
    beside_hands_cm: seen.besideHandsCm,
    frames_per_second: seen.framesPerSecond,
    shutter_per_second: seen.shutterPerSecond,
    placed_by: capture.placedBy,
    set_aside_reason: capture.setAsideReason,
    film_reference: capture.filmReference,
  };
}

function changedOf(now: Columns, wished: Columns): Columns {
  return Object.fromEntries(Object.entries(wished).filter(([name, value]) => now[name] !== value));
}

/** What a camera record says when nobody has said anything. */
const UNSAID = { placement: "unknown", squareness: "unknown" };

/** A view whose record is missing gets one only when there is something to say. */
function captureStates(db: Database, sessionId: string, captures: readonly EnteredCapture[]): RowState[] {
  const find = db.sqlite.prepare<[string, string], Columns>("SELECT * FROM capture WHERE session_id = ? AND view = ?");
  return captures.flatMap((capture): RowState[] => {
    const now = find.get(sessionId, capture.view);
    const wished = captureColumns(capture);
    const key = { session_id: sessionId, view: capture.view };
    if (!now) {
      const blank: Columns = { ...Object.fromEntries(Object.keys(wished).map((name) => [name, null])), ...UNSAID };
      return Object.keys(changedOf(blank, wished)).length > 0 ? [{ table: "capture", key, values: wished }] : [];
    }
    const changed = changedOf(now, wished);
    return Object.keys(changed).length > 0 ? [{ table: "capture", key, values: changed }] : [];
  });
}

/**
 * The first readings of a session go with its reader: a value in force is one by the session's reader.
 *
 * @returns null: the new reader has first readings of the same swings and fundamentals
 */
function readingStates(db: Database, sessionId: string, from: ColumnValue | undefined, to: string): RowState[] | null {
  if (from === to) return [];
  const both = db.sqlite
    .prepare(
      `SELECT 1 FROM reading mine JOIN reading theirs USING (swing_id, fundamental_id)
       WHERE mine.session_id = ? AND mine.reader = ? AND mine.reread = 0 AND theirs.reader = ? AND theirs.reread = 0`,
    )
    .get(sessionId, from, to);
  if (both !== undefined) return null;
  return db.sqlite
    .prepare<[string, ColumnValue | undefined], number>(
      "SELECT id FROM reading WHERE session_id = ? AND reader = ? AND reread = 0 ORDER BY id",
    )
    .pluck()
    .all(sessionId, from)
    .map((id) => ({ table: "reading", key: { id }, values: { reader: to } }));
}

/**
 * Says anew what is known of a session, and keeps how it was; values stay as they are, and are said to be the reader's who
 * is named. Where another session has the
 * place that the new day or group asks for, it takes the next free one of that day.
 */
export function updateSessionFacts(
  db: Database,
  scope: StudentScope,
  sessionId: string,
  facts: SessionFacts,
  note: ChangeNote,
): FactsUpdate {
  return inTransaction(db, () => {
    const now = db.sqlite
      .prepare<[string, string], Columns>("SELECT * FROM session WHERE id = ? AND student_id = ?")
      .get(sessionId, scope.studentId);
    if (!now) return { kind: "unknown-session" };
    const { studentId } = scope;
    const place = { studentId, clubGroup: facts.clubGroup, day: facts.day, sessionId };
    const sequence = freeSequence(db, place, Number(now.sequence));
    const changed = changedOf(now, { ...sessionColumns(facts), sequence });
    const read = readingStates(db, sessionId, now.reader, facts.reader);
    if (read === null) return { kind: "reader-has-read" };
    if (now.reader !== facts.reader && isBeingRead(db, [sessionId])) return { kind: "being-read" };
    const after: RowState[] = [
      ...(Object.keys(changed).length > 0 ? [{ table: "session", key: { id: sessionId }, values: changed }] : []),
      ...captureStates(db, sessionId, facts.captures),
      ...read,
    ];
    if (after.length === 0) return { kind: "unchanged" };
    const change = { kind: "session-facts", studentId, otherStudentId: null, sessionId, after } as const;
    return { kind: "changed", changeId: writeRecordChange(db, scope, change, note) };
  });
}
