import type Sqlite from "better-sqlite3";
import type { ClubGroup } from "@/lib/domain/club-group";
import { type ClubGrouping, groupNow } from "@/lib/domain/club-grouping";
import type { StudentScope } from "@/lib/domain/scope";
import type { EnteredReading, EnteredSession, EnteredSwing } from "@/lib/domain/session-entry";
import { type Database, inTransaction } from "../client";
import { joinWords } from "../joined-words";
import { type AcademyKey, readClubGrouping } from "../read/club-groups";
import { type Stamp, updateRevision } from "./students";

/** What every new row bears: the hour, and the import that it came with, if any. */
export interface RowOrigin {
  readonly now: string;
  readonly batchId: string | null;
}

/** A reading that is on file with another value; what is on file stands, what was given is not written. */
export interface ReadingConflict {
  readonly swing: number;
  readonly fundamentalId: string;
  readonly onFile: { readonly value: number | null; readonly typed: string };
  readonly given: { readonly value: number | null; readonly typed: string };
}

/** What came of entering swings. */
export interface EnteredCounts {
  readonly swings: number;
  readonly readings: number;
  /** Readings that were on file with this very value. */
  readonly skipped: number;
  readonly conflicts: readonly ReadingConflict[];
}

/** `exists`: the club group has that session of the day on file, or the id was used; nothing was written. */
export type SessionInsert =
  | ({ readonly kind: "inserted"; readonly sessionId: string; readonly sequence: number } & EnteredCounts)
  | { readonly kind: "exists"; readonly sessionId: string };

/** Where a session of the day is looked for; the club group is the one that was said. */
export interface SessionPlace {
  readonly studentId: string;
  readonly clubGroup: ClubGroup;
  readonly day: string;
  readonly sequence: number;
}

type Found<P extends unknown[], R> = Sqlite.Statement<P, R>;

/** The statements of entering sessions, prepared once for many. */
export interface SessionStatements {
  readonly grouping: ClubGrouping;
  readonly sessionAt: Found<[SessionPlace], { id: string; reader: string }>;
  readonly lastSequence: Found<[string, string, string], number | null>;
  readonly session: Sqlite.Statement<[Record<string, unknown>]>;
  readonly capture: Sqlite.Statement<[Record<string, unknown>]>;
  readonly statedSd: Sqlite.Statement<[string, string, number, string | null]>;
  readonly swing: Sqlite.Statement<[string, number, string | null, string | null]>;
  readonly swingAt: Found<[string, number], number>;
  readonly reading: Sqlite.Statement<(string | number | null)[]>;
  readonly readingAt: Found<[number, string, string, number], { id: number; value: number | null; typed: string }>;
  readonly correctedTo: Found<[number], { value: number | null; typed: string }>;
}

export function prepareSessionStatements(db: Database, scope: AcademyKey): SessionStatements {
  const { sqlite } = db;
  return {
    grouping: readClubGrouping(db, scope),
    sessionAt: sqlite.prepare(
      `SELECT id, reader FROM session
       WHERE student_id = :studentId AND said_club_group = :clubGroup AND day = :day AND sequence = :sequence`,
    ),
    lastSequence: sqlite
      .prepare("SELECT max(sequence) FROM session WHERE student_id = ? AND said_club_group = ? AND day = ?")
      .pluck() as SessionStatements["lastSequence"],
    session: sqlite.prepare(
      `INSERT INTO session (id, student_id, day, sequence, club_group, said_club_group, club, reader, circumstance, aid,
         stance_width_cm, days_since_practice, marks, note, solid, balls, set_aside_reason, batch_id, created_at,
         group_id)
       VALUES (:id, :studentId, :day, :sequence, :groupNow, :clubGroup, :club, :reader, :circumstance, :aid,
         :stanceWidthCm, :daysSincePractice, :marks, :note, :solid, :balls, :setAsideReason, :batchId, :now,
         :groupId)`,
    ),
    capture: sqlite.prepare(
      `INSERT INTO capture (session_id, view, placement, placement_label, squareness, off_by, set_aside_reason,
         film_reference, placed_by, batch_id, pointing_stick_lean, across_stick_slope, plumb_lean, lens_height_cm,
         hands_height_cm, distance_cm, beside_hands_cm, frames_per_second, shutter_per_second)
       VALUES (:sessionId, :view, :placement, :placementLabel, :squareness, :offBy, :setAsideReason, :filmReference,
         :placedBy, :batchId, :pointingStickLean, :acrossStickSlope, :plumbLean, :lensHeightCm, :handsHeightCm, :distanceCm,
         :besideHandsCm, :framesPerSecond, :shutterPerSecond)
       ON CONFLICT DO NOTHING`,
    ),
    statedSd: sqlite.prepare(
      "INSERT INTO stated_capture_sd (session_id, fundamental_id, sd, batch_id) VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING",
    ),
    swing: sqlite.prepare(
      "INSERT INTO swing (session_id, number, note, batch_id) VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING",
    ),
    swingAt: sqlite
      .prepare("SELECT id FROM swing WHERE session_id = ? AND number = ?")
      .pluck() as SessionStatements["swingAt"],
    reading: sqlite.prepare(
      `INSERT INTO reading (student_id, fundamental_id, session_id, swing_id, reader, reread, value, typed, unit,
         sign_rule, entered_at, batch_id)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
       ON CONFLICT DO NOTHING`,
    ),
    readingAt: sqlite.prepare(
      "SELECT id, value, typed FROM reading WHERE swing_id = ? AND fundamental_id = ? AND reader = ? AND reread = ?",
    ),
    correctedTo: sqlite.prepare("SELECT value, typed FROM correction WHERE reading_id = ? ORDER BY id DESC LIMIT 1"),
  };
}

/** Whose swings are entered, and which reading of them it is. */
export interface EnteringReader {
  readonly studentId: string;
  readonly sessionId: string;
  readonly reader: string;
  /** 0: first reading by this reader. */
  readonly reread: number;
}

function conflictWith(
  statements: SessionStatements,
  swingId: number,
  { reader, reread }: EnteringReader,
  given: EnteredReading,
): Omit<ReadingConflict, "swing"> | undefined {
  const entered = statements.readingAt.get(swingId, given.fundamentalId, reader, reread);
  if (!entered) throw new Error(`neither written nor on file: ${given.fundamentalId} of swing ${swingId}`);
  const inForce = statements.correctedTo.get(entered.id) ?? entered;
  if (given.value === entered.value || given.value === inForce.value) return undefined;
  return {
    fundamentalId: given.fundamentalId,
    onFile: { value: inForce.value, typed: inForce.typed },
    given: { value: given.value, typed: given.typed },
  };
}

// By place, not by name: binding by name takes half the time of a large import.
function writeReading(
  { reading }: SessionStatements,
  swingId: number,
  { studentId, sessionId, reader, reread }: EnteringReader,
  { fundamentalId, value, typed, unit, signRule }: EnteredReading,
  { now, batchId }: RowOrigin,
): boolean {
  const { changes } = reading.run(
    studentId,
    fundamentalId,
    sessionId,
    swingId,
    reader,
    reread,
    value,
    typed,
    unit,
    signRule,
    now,
    batchId,
  );
  return changes === 1;
}

/** Adds what is missing; what is on file stays. To be called inside a transaction. */
export function enterSwings(
  statements: SessionStatements,
  entering: EnteringReader,
  swings: readonly EnteredSwing[],
  origin: RowOrigin,
): EnteredCounts {
  const conflicts: ReadingConflict[] = [];
  let [newSwings, newReadings, skipped] = [0, 0, 0];
  for (const swing of swings) {
    const made = statements.swing.run(entering.sessionId, swing.number, swing.note, origin.batchId);
    const swingId =
      made.changes === 1 ? Number(made.lastInsertRowid) : statements.swingAt.get(entering.sessionId, swing.number);
    if (swingId === undefined) throw new Error(`no swing ${swing.number} in session ${entering.sessionId}`);
    newSwings += made.changes;
    for (const reading of swing.readings) {
      if (writeReading(statements, swingId, entering, reading, origin)) {
        newReadings += 1;
        continue;
      }
      const conflict = conflictWith(statements, swingId, entering, reading);
      if (conflict) conflicts.push({ swing: swing.number, ...conflict });
      else skipped += 1;
    }
  }
  return { swings: newSwings, readings: newReadings, skipped, conflicts };
}

/** Adds the camera records that are missing; those on file stay. */
export function enterCaptures(
  statements: SessionStatements,
  sessionId: string,
  entered: EnteredSession,
  { batchId }: RowOrigin,
): number {
  const views = entered.captures.map(
    ({ seen, ...record }) => statements.capture.run({ ...record, ...seen, sessionId, batchId }).changes,
  );
  const sds = entered.statedCaptureSds.map(
    ({ fundamentalId, sd }) => statements.statedSd.run(sessionId, fundamentalId, sd, batchId).changes,
  );
  return [...views, ...sds].reduce((sum, changes) => sum + changes, 0);
}

/** The session's own row and camera records. To be called inside a transaction. */
export function enterSessionRow(
  statements: SessionStatements,
  place: SessionPlace & { readonly id: string },
  entered: EnteredSession,
  origin: RowOrigin,
): void {
  const { captures: _captures, statedCaptureSds: _sds, swings: _swings, marks, groupId = null, ...fields } = entered;
  const inForce = groupNow(statements.grouping, place.clubGroup, entered.club);
  statements.session.run({ ...fields, ...place, ...origin, groupNow: inForce, groupId, marks: joinWords(marks) });
  enterCaptures(statements, place.id, entered, origin);
}

/** One session, whole or not at all. Without a sequence it takes the next free place of its day and club group. */
export function insertSession(
  db: Database,
  scope: StudentScope,
  entered: EnteredSession,
  { now, newId, batchId }: Stamp & { readonly batchId: string | null },
): SessionInsert {
  return inTransaction(db, () => {
    const { studentId } = scope;
    const { clubGroup, day } = entered;
    const statements = prepareSessionStatements(db, scope);
    const sequence = entered.sequence ?? (statements.lastSequence.get(studentId, clubGroup, day) ?? 0) + 1;
    const id = newId();
    const taken =
      statements.sessionAt.get({ studentId, clubGroup, day, sequence })?.id ??
      db.sqlite.prepare<[string], string>("SELECT id FROM session WHERE id = ?").pluck().get(id);
    if (taken !== undefined) return { kind: "exists", sessionId: taken };
    updateRevision(db, scope);
    const origin = { now, batchId };
    enterSessionRow(statements, { id, studentId, clubGroup, day, sequence }, entered, origin);
    const entering = { studentId, sessionId: id, reader: entered.reader, reread: 0 };
    const counts = enterSwings(statements, entering, entered.swings, origin);
    return { kind: "inserted", sessionId: id, sequence, ...counts };
  });
}
