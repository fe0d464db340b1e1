import { and, eq } from "drizzle-orm";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { type BuiltOnImport, readBuiltOnImport, readTouchedStudents } from "../read/built-on-import";
import { importBatch } from "../schema";
import { updateKeptToDraft } from "./kept-files";
import { updateRevision } from "./students";

/** What an undone import took along. `file`: whether its file lies ready to be imported again, under the batch's id. */
export type ImportUndo =
  | {
      readonly kind: "undone";
      readonly students: number;
      readonly sessions: number;
      readonly readings: number;
      readonly file: "given" | "gone";
    }
  | { readonly kind: "built-on"; readonly built: readonly BuiltOnImport[] }
  /** Of some of its students whoever asks has no proof any more. */
  | { readonly kind: "out-of-charge" }
  | { readonly kind: "undone-before" }
  | { readonly kind: "not-there" };

/** Who takes an import back, and the gate's proof for each student of whose record some of it is. */
export interface UndoDoor {
  readonly now: string;
  readonly who: string;
  /** Null: there is none. */
  readonly scopeOf: (studentId: string) => StudentScope | null;
}

// What hangs on a row goes before it, so that nothing goes unseen with another.
const TABLES = [
  "carried_look",
  "reading",
  "swing",
  "capture",
  "stated_capture_sd",
  "session",
  "practice",
  "event",
  "drill_assignment",
  "consent",
  "student",
] as const;

function partsOf(db: Database, scope: AcademyScope): string {
  const own = db.sqlite
    .prepare<[string], { id: string; definition: string }>(
      "SELECT id, definition FROM own_fundamental WHERE academy_id = ?",
    )
    .all(scope.academyId)
    .map(({ id, definition }) => ({ id, ...(JSON.parse(definition) as { derivedFrom?: readonly string[] | null }) }));
  const parts = [...BUILT_IN, ...own].flatMap(({ id, derivedFrom }) => (derivedFrom ?? []).map((part) => [id, part]));
  return JSON.stringify(parts);
}

/** Looks whose readings go: of its sessions, and of others' sessions where nothing of a fundamental is left. */
function deleteLooks(db: Database, scope: AcademyScope, batch: string): readonly string[] {
  return db.sqlite
    .prepare<[{ batch: string; parts: string }], string>(
      `WITH own_session AS (SELECT id FROM session WHERE batch_id = :batch),
         part AS (SELECT value ->> 0 AS whole, value ->> 1 AS part FROM json_each(:parts)),
         lost AS (SELECT DISTINCT session_id, fundamental_id FROM reading own WHERE batch_id = :batch
           AND NOT EXISTS (SELECT 1 FROM swing JOIN reading other ON other.swing_id = swing.id
             WHERE swing.session_id = own.session_id AND other.fundamental_id = own.fundamental_id
               AND other.reread = 0 AND other.value IS NOT NULL AND other.batch_id IS NOT :batch))
       DELETE FROM look_noise WHERE session_id IN (SELECT id FROM own_session)
         OR (session_id, fundamental_id) IN lost
         OR (session_id, fundamental_id) IN (SELECT session_id, whole FROM lost JOIN part ON part = fundamental_id)
       RETURNING noise_model_name`,
    )
    .pluck()
    .all({ batch, parts: partsOf(db, scope) });
}

/**
 * Models that were learned since the import and with which no look that stays was said: they go with what they were
 * learned from. One that a look names stays, as every look keeps its model.
 */
function deleteModels(db: Database, scope: AcademyScope, names: readonly string[], since: string): void {
  db.sqlite
    .prepare<[{ academy: string; names: string; since: string }]>(
      `DELETE FROM noise_model WHERE academy_id = :academy AND fitted_at >= :since
         AND pool IN (SELECT pool FROM noise_model WHERE academy_id = :academy
           AND name IN (SELECT value FROM json_each(:names)))
         AND number > (SELECT coalesce(max(number), 0) FROM noise_model older
           WHERE older.academy_id = :academy AND older.pool = noise_model.pool
             AND (older.fitted_at < :since OR older.name IN (SELECT noise_model_name FROM look_noise)))`,
    )
    .run({ academy: scope.academyId, names: JSON.stringify([...new Set(names)]), since });
}

function deleteRows(db: Database, batch: string): Record<(typeof TABLES)[number], number> {
  const counts = TABLES.map((table) => [
    table,
    db.sqlite.prepare<[string]>(`DELETE FROM ${table} WHERE batch_id = ?`).run(batch).changes,
  ]);
  return Object.fromEntries(counts);
}

/**
 * Takes an import back, whole or not at all: exactly the rows that it wrote go, with the looks at them; the batch stays
 * as its history, and the same file can be imported anew. `built-on`, `out-of-charge`: nothing changed.
 */
export function undoImport(db: Database, scope: AcademyScope, batchId: string, door: UndoDoor): ImportUndo {
  return inTransaction(db, () => {
    const here = and(eq(importBatch.id, batchId), eq(importBatch.academyId, scope.academyId));
    const batch = db.orm.select().from(importBatch).where(here).get();
    if (!batch) return { kind: "not-there" };
    if (batch.undoneAt !== null) return { kind: "undone-before" };
    const built = readBuiltOnImport(db, scope, batch);
    if (built.length > 0) return { kind: "built-on", built };
    const touched = readTouchedStudents(db, batchId).map(({ id, isNew }) => ({ student: door.scopeOf(id), isNew }));
    for (const { student } of touched) if (!student) return { kind: "out-of-charge" };
    for (const { student, isNew } of touched) if (student && isNew === 0) updateRevision(db, student);
    const names = deleteLooks(db, scope, batchId);
    deleteModels(db, scope, names, batch.createdAt);
    const { student: students, session: sessions, reading: readings } = deleteRows(db, batchId);
    db.orm.update(importBatch).set({ undoneAt: door.now, undoneBy: door.who }).where(here).run();
    return { kind: "undone", students, sessions, readings, file: updateKeptToDraft(db, scope, batchId, door.now) };
  });
}
