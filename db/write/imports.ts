import { and, eq } from "drizzle-orm";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { EnteredSession, ImportPlan } from "@/lib/domain/session-entry";
import { type Database, inTransaction } from "../client";
import type { ImportBatch } from "../read/imports";
import { importBatch, student } from "../schema";
import {
  enterCaptures,
  enterSessionRow,
  enterSwings,
  prepareSessionStatements,
  type ReadingConflict,
  type SessionStatements,
} from "./sessions";
import { insertStudent, type Stamp, updateRevision } from "./students";

/** A reading of a session that is on file with another value. */
export type ImportConflict = ReadingConflict & { readonly alias: string; readonly day: string };

/** What an import wrote; `already-imported`: the same file was imported before, nothing was written. */
export type ImportInsert =
  | {
      readonly kind: "imported";
      readonly batchId: string;
      readonly students: number;
      readonly sessions: number;
      readonly swings: number;
      readonly readings: number;
      readonly skipped: number;
      readonly conflicts: readonly ImportConflict[];
    }
  | { readonly kind: "already-imported"; readonly batch: Pick<ImportBatch, "id" | "fileName" | "createdAt"> };

/** What an import takes from outside: the hour, fresh ids, and the gate's proof for each student. */
export type ImportStamp = Stamp & { readonly scopeOf: (studentId: string) => StudentScope };

interface Tally {
  sessions: number;
  swings: number;
  readings: number;
  skipped: number;
  readonly conflicts: ImportConflict[];
}

function earlierBatch(db: Database, scope: AcademyScope, contentHash: string) {
  const { id, fileName, createdAt } = importBatch;
  return db.orm
    .select({ id, fileName, createdAt })
    .from(importBatch)
    .where(and(eq(importBatch.academyId, scope.academyId), eq(importBatch.contentHash, contentHash)))
    .get();
}

/** The place of a session within its day: the stated one, else one after the other as they stand in the file. */
function placeOf(entered: EnteredSession, studentId: string, used: Map<string, number>) {
  const { clubGroup, day } = entered;
  const key = `${studentId} ${clubGroup} ${day}`;
  const sequence = entered.sequence ?? (used.get(key) ?? 0) + 1;
  used.set(key, sequence);
  return { studentId, clubGroup, day, sequence };
}

function enterSession(
  statements: SessionStatements,
  place: ReturnType<typeof placeOf>,
  entered: EnteredSession,
  alias: string,
  origin: { readonly now: string; readonly batchId: string; readonly newId: () => string },
  tally: Tally,
): "changed" | "same" {
  const onFile = statements.sessionAt.get(place);
  const id = onFile?.id ?? origin.newId();
  let captures = 0;
  if (onFile) captures = enterCaptures(statements, id, entered);
  else enterSessionRow(statements, { id, ...place }, entered, origin);
  const entering = { studentId: place.studentId, sessionId: id, reader: entered.reader, reread: 0 };
  const counts = enterSwings(statements, entering, entered.swings, origin);
  tally.sessions += onFile ? 0 : 1;
  tally.swings += counts.swings;
  tally.readings += counts.readings;
  tally.skipped += counts.skipped;
  for (const conflict of counts.conflicts) tally.conflicts.push({ ...conflict, alias, day: entered.day });
  return !onFile || captures + counts.swings + counts.readings > 0 ? "changed" : "same";
}

/**
 * Writes an import, whole or not at all. Sessions on file get what they lack; a reading on file with another value stays
 * and is named. The same file a second time changes nothing.
 *
 * @throws Error for a session of a student whom neither the academy nor the plan has; nothing is written
 */
export function insertImport(db: Database, scope: AcademyScope, plan: ImportPlan, stamp: ImportStamp): ImportInsert {
  return inTransaction(db, (): ImportInsert => {
    const batch = earlierBatch(db, scope, plan.contentHash);
    if (batch) return { kind: "already-imported", batch };
    const { now, newId, scopeOf } = stamp;
    const batchId = newId();
    const { fileName, contentHash, form, rows, answers } = plan;
    const academyId = scope.academyId;
    db.orm
      .insert(importBatch)
      .values({ id: batchId, academyId, fileName, contentHash, form, rows, readings: 0, answers, createdAt: now })
      .run();
    const ids = new Map(
      db.orm
        .select({ id: student.id, alias: student.alias })
        .from(student)
        .where(eq(student.academyId, academyId))
        .all()
        .map((row) => [row.alias, row.id]),
    );
    let students = 0;
    for (const { alias, hand, birthYear, consentGivenBy } of plan.newStudents) {
      const zone =
        db.sqlite.prepare<[string], string>("SELECT zone FROM academy WHERE id = ?").pluck().get(academyId) ?? "UTC";
      const consent = {
        kind: "measure",
        givenBy: consentGivenBy,
        from: now.slice(0, 10),
        until: null,
        withdrawnOn: null,
      } as const;
      const made = insertStudent(db, scope, { id: newId(), alias, hand, birthYear, zone, clubs: "" }, consent, {
        now,
        newId,
      });
      ids.set(alias, made.studentId);
      students += made.kind === "inserted" ? 1 : 0;
    }
    const statements = prepareSessionStatements(db);
    const tally: Tally = { sessions: 0, swings: 0, readings: 0, skipped: 0, conflicts: [] };
    const used = new Map<string, number>();
    const changed = new Set<string>();
    for (const { alias, session } of plan.sessions) {
      const studentId = ids.get(alias);
      if (studentId === undefined) throw new Error(`no such student: ${alias}`);
      const place = placeOf(session, studentId, used);
      if (enterSession(statements, place, session, alias, { now, batchId, newId }, tally) === "changed")
        changed.add(studentId);
    }
    for (const studentId of changed) updateRevision(db, scopeOf(studentId));
    db.orm.update(importBatch).set({ readings: tally.readings }).where(eq(importBatch.id, batchId)).run();
    return { kind: "imported", batchId, students, ...tally };
  });
}
