import type { ArchivedSession, ArchivedSwing } from "@/lib/domain/archive-session";
import type { ClubGroup } from "@/lib/domain/club-group";
import { type ClubGrouping, groupNow } from "@/lib/domain/club-grouping";
import type { Database } from "../client";
import { capture, session, statedCaptureSd } from "../schema";
import { lookNoise } from "../schema-work";

/** Whose sessions are written, with which import, and how an id is found that is free here. */
export interface ArchiveEntry {
  readonly studentId: string;
  readonly batchId: string;
  readonly grouping: ClubGrouping;
  /** The id as it was, or a new one where it is taken. */
  readonly freeId: (table: "session", id: string) => string;
}

/** Where the swings and readings of an archive came to lie. */
export interface PlacedReadings {
  readonly swingAt: (sessionId: string, swing: number) => number;
  readonly readingAt: (swingId: number, fundamentalId: string, reader: string, reread: number) => number | null;
}

type Correction = ArchivedSwing["readings"][number]["corrections"][number] & { readonly readingId: number };

function enterSwings(db: Database, entry: ArchiveEntry, sessionId: string, swings: readonly ArchivedSwing[]) {
  const swingRow = db.sqlite.prepare<[string, number, string | null, string]>(
    "INSERT INTO swing (session_id, number, note, batch_id) VALUES (?, ?, ?, ?)",
  );
  const readingRow = db.sqlite.prepare<(string | number | null)[]>(
    `INSERT INTO reading (student_id, fundamental_id, session_id, swing_id, reader, reread, value, typed, unit, sign_rule,
       entered_at, batch_id) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  );
  const corrections: Correction[] = [];
  let readings = 0;
  for (const { number, note, readings: read } of swings) {
    const swingId = Number(swingRow.run(sessionId, number, note, entry.batchId).lastInsertRowid);
    for (const { fundamentalId, reader, reread, value, typed, unit, signRule, enteredAt, corrections: mends } of read) {
      const facts = [reader, reread, value, typed, unit, signRule, enteredAt, entry.batchId];
      const made = readingRow.run(entry.studentId, fundamentalId, sessionId, swingId, ...facts);
      corrections.push(...mends.map((mend) => ({ ...mend, readingId: Number(made.lastInsertRowid) })));
      readings += 1;
    }
  }
  return { readings, corrections };
}

/** In the order in which they were made: the later row is the one in force. */
function enterCorrections(db: Database, corrections: readonly Correction[]): void {
  const row = db.sqlite.prepare<[Omit<Correction, "place">]>(
    `INSERT INTO correction (reading_id, kind, value, typed, who, why, corrected_at)
     VALUES (:readingId, :kind, :value, :typed, :who, :why, :correctedAt)`,
  );
  for (const { place: _, ...mend } of corrections.toSorted((a, b) => a.place - b.place)) row.run(mend);
}

/**
 * Writes sessions as they were, with their captures, swings, readings, corrections and the noise models of their looks.
 * To be called inside a transaction.
 *
 * @returns counts, and the ids by the ids that the archive has
 */
export function enterArchivedSessions(db: Database, entry: ArchiveEntry, sessions: readonly ArchivedSession[]) {
  const { studentId, batchId } = entry;
  const ids = new Map<string, string>();
  const corrections: Correction[] = [];
  let [swings, readings] = [0, 0];
  for (const { captures, statedCaptureSds, swings: filmed, looks, ...facts } of sessions) {
    const id = entry.freeId("session", facts.id);
    ids.set(facts.id, id);
    const saidClubGroup = facts.saidClubGroup as ClubGroup;
    const clubGroup = groupNow(entry.grouping, saidClubGroup, facts.club);
    db.orm
      .insert(session)
      .values({ ...facts, id, studentId, batchId, saidClubGroup, clubGroup })
      .run();
    for (const view of captures)
      db.orm
        .insert(capture)
        .values({ ...view, sessionId: id, batchId })
        .run();
    for (const sd of statedCaptureSds)
      db.orm
        .insert(statedCaptureSd)
        .values({ ...sd, sessionId: id, batchId })
        .run();
    const made = enterSwings(db, entry, id, filmed);
    corrections.push(...made.corrections);
    for (const look of looks)
      db.orm
        .insert(lookNoise)
        .values({ ...look, studentId, sessionId: id })
        .run();
    swings += filmed.length;
    readings += made.readings;
  }
  enterCorrections(db, corrections);
  return { swings, readings, ids };
}

/** Finds swings and readings by what an archive calls them. */
export function placedReadings(db: Database): PlacedReadings {
  const swing = db.sqlite
    .prepare<[string, number], number>("SELECT id FROM swing WHERE session_id = ? AND number = ?")
    .pluck();
  const reading = db.sqlite
    .prepare<[number, string, string, number], number>(
      "SELECT id FROM reading WHERE swing_id = ? AND fundamental_id = ? AND reader = ? AND reread = ?",
    )
    .pluck();
  return {
    swingAt(sessionId, number) {
      const id = swing.get(sessionId, number);
      if (id === undefined) throw new RangeError(`no swing ${number} in session ${sessionId}`);
      return id;
    },
    readingAt: (swingId, fundamentalId, reader, reread) => reading.get(swingId, fundamentalId, reader, reread) ?? null,
  };
}
