import type { StudentScope } from "@/lib/domain/scope";
import type { EnteredSwing } from "@/lib/domain/session-entry";
import { type Database, inTransaction } from "../client";
import { readSessionReadings } from "../read/session-readings";
import { enterSwings, prepareSessionStatements, type ReadingConflict } from "./sessions";
import { updateRevision } from "./students";

/** A change of one reading by somebody who had seen its correction of that number in force; 0: none. */
export interface CellChange {
  readonly readingId: number;
  readonly seen: number;
  /** void: the reading counts no more. */
  readonly kind: "change" | "void";
  /** Null: not measurable, or void. */
  readonly value: number | null;
  readonly typed: string;
}

/** Changes of one session's readings, and readings that were missed. */
export interface SessionCorrection {
  readonly sessionId: string;
  readonly changes: readonly CellChange[];
  readonly added: readonly EnteredSwing[];
  readonly who: string;
  readonly why: string;
  readonly now: string;
}

/** `conflict`: others changed or added these meanwhile; nothing was written. */
export type CorrectionOutcome =
  | { readonly kind: "saved"; readonly corrected: number; readonly added: number }
  | { readonly kind: "unknown-session" }
  | { readonly kind: "conflict"; readonly readingIds: readonly number[]; readonly added: readonly ReadingConflict[] };

class Overtaken extends Error {
  constructor(readonly conflicts: readonly ReadingConflict[]) {
    super("readings were added meanwhile");
  }
}

function insertChanges(db: Database, { changes, who, why, now }: SessionCorrection): number {
  const insert = db.sqlite.prepare<[CellChange & { who: string; why: string; now: string }]>(
    `INSERT INTO correction (reading_id, kind, value, typed, who, why, corrected_at)
     VALUES (:readingId, :kind, :value, :typed, :who, :why, :now)`,
  );
  for (const change of changes)
    insert.run({ ...change, value: change.kind === "void" ? null : change.value, who, why, now });
  return changes.length;
}

function correctSession(db: Database, scope: StudentScope, wish: SessionCorrection): CorrectionOutcome {
  const { sessionId, now } = wish;
  const reader = db.sqlite
    .prepare<[string, string], string>("SELECT reader FROM session WHERE id = ? AND student_id = ?")
    .pluck()
    .get(sessionId, scope.studentId);
  if (reader === undefined) return { kind: "unknown-session" };
  const latest = new Map(readSessionReadings(db, scope, sessionId).map((row) => [row.id, row.correctionId]));
  const overtaken = wish.changes.filter((change) => latest.get(change.readingId) !== change.seen);
  if (overtaken.length > 0)
    return { kind: "conflict", readingIds: overtaken.map((change) => change.readingId), added: [] };
  const corrected = insertChanges(db, wish);
  const entering = { studentId: scope.studentId, sessionId, reader, reread: 0 };
  const counts = enterSwings(prepareSessionStatements(db, scope), entering, wish.added, { now, batchId: null });
  if (counts.conflicts.length > 0) throw new Overtaken(counts.conflicts);
  if (corrected + counts.readings > 0) updateRevision(db, scope);
  return { kind: "saved", corrected, added: counts.readings };
}

/**
 * Corrects readings of one session and adds what was missed, all of it or nothing. A reading keeps what was first
 * typed; whoever didn't see its latest correction is told and overwrites nothing.
 */
export function insertSessionCorrection(db: Database, scope: StudentScope, wish: SessionCorrection): CorrectionOutcome {
  try {
    return inTransaction(db, () => correctSession(db, scope, wish));
  } catch (error) {
    if (error instanceof Overtaken) return { kind: "conflict", readingIds: [], added: error.conflicts };
    throw error;
  }
}
