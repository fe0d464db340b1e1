import { eq } from "drizzle-orm";
import type { Consent } from "@/lib/domain/consent";
import { paperConsent } from "@/lib/domain/paper-consent";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { EnteredSession, ImportPlan } from "@/lib/domain/session-entry";
import { type Database, inTransaction } from "../client";
import { readAcademy } from "../read/academies";
import { type ImportBatch, readImportBatch } from "../read/import-batches";
import { readStudentNames } from "../read/students";
import { importBatch } from "../schema";
import {
  enterCaptures,
  enterSessionRow,
  enterSwings,
  prepareSessionStatements,
  type ReadingConflict,
  type RowOrigin,
  type SessionStatements,
} from "./sessions";
import { insertConsent, insertStudent, type Stamp, updateRevision } from "./students";

/** A reading on file with another value, with where it lies. */
export type ImportConflict = ReadingConflict & {
  readonly alias: string;
  readonly studentId: string;
  readonly sessionId: string;
  readonly day: string;
  readonly clubGroup: string;
};

/** What an import added; `skipped` readings were on file with this very value. */
export interface ImportCounts {
  readonly students: number;
  readonly sessions: number;
  readonly swings: number;
  readonly readings: number;
  readonly skipped: number;
  readonly conflicts: readonly ImportConflict[];
}

/** Only `imported` wrote anything. */
export type ImportInsert =
  | ({ readonly kind: "imported"; readonly batchId: string } & ImportCounts)
  | { readonly kind: "already-imported"; readonly batch: ImportBatch }
  | { readonly kind: "unknown-students"; readonly aliases: readonly string[] };

/** From outside: the hour, fresh ids, and the gate's proof for each student that the file names. */
export interface ImportDoor extends Stamp {
  readonly scopeOf: (studentId: string) => StudentScope;
  /** The day where the academy is, on which consents begin; absent: the hour's. */
  readonly today?: string;
  /** By which door the file came; absent: the page. */
  readonly door?: ImportBatch["door"];
  /** Id of the batch; absent or null: a fresh one. */
  readonly batchId?: string | null;
  /** Consents of students whom the academy has, given with the file. */
  readonly consents?: readonly { readonly studentId: string; readonly consent: Consent }[];
  /** Told after each session how many readings of the file are settled; what it throws undoes the whole import. */
  readonly onSettled?: (readings: number) => void;
}

/** Ids by alias of everybody on file, after the plan's new students were added. */
function enterStudents(db: Database, scope: AcademyScope, plan: ImportPlan, door: ImportDoor, batchId: string) {
  const stamp = { ...door, batchId };
  for (const { studentId, consent } of door.consents ?? []) insertConsent(db, door.scopeOf(studentId), consent, stamp);
  const ids = new Map([
    ...readStudentNames(db, scope).map((student) => [student.alias, student.id] as const),
    ...(plan.whose ?? []).map(({ alias, studentId }) => [alias, studentId] as const),
  ]);
  const missing = plan.newStudents.filter(({ alias }) => !ids.has(alias));
  const { zone, ownConsentAge } = readAcademy(db, scope);
  const day = door.today ?? door.now.slice(0, 10);
  for (const { alias, hand, birthYear, consentGivenBy } of missing) {
    const student = { id: door.newId(), alias, birthYear, hand, zone, clubs: "" };
    const consent = paperConsent(consentGivenBy, { day, birthYear, ownConsentAge });
    const made = insertStudent(db, scope, student, consent, stamp);
    if (made.kind === "alias-taken") throw new RangeError(`two new students of one alias: ${alias}`);
    ids.set(alias, student.id);
  }
  return { ids, added: missing.length };
}

// A file without sequences means the same sessions when it is read again, so they count from one in the file's order.
function placesOf(plan: ImportPlan): number[] {
  const counts = new Map<string, number>();
  return plan.sessions.map(({ alias, session }) => {
    if (session.sequence !== null) return session.sequence;
    const key = JSON.stringify([alias, session.clubGroup, session.day]);
    const place = (counts.get(key) ?? 0) + 1;
    counts.set(key, place);
    return place;
  });
}

function enterSession(
  statements: SessionStatements,
  studentId: string,
  session: EnteredSession,
  sequence: number,
  door: ImportDoor,
  origin: RowOrigin,
) {
  const { clubGroup, day } = session;
  const place = { studentId, clubGroup, day, sequence };
  const onFile = statements.sessionAt.get(place);
  const id = onFile?.id ?? door.newId();
  let captures = 0;
  if (onFile) captures = enterCaptures(statements, id, session, origin);
  else enterSessionRow(statements, { ...place, id }, session, origin);
  const entering = { studentId, sessionId: id, reader: session.reader, reread: 0 };
  const counts = enterSwings(statements, entering, session.swings, origin);
  return { ...counts, sessionId: id, captures, sessions: onFile ? 0 : 1 };
}

function enterSessions(
  db: Database,
  scope: AcademyScope,
  plan: ImportPlan,
  scopes: ReadonlyMap<string, StudentScope>,
  door: ImportDoor,
  origin: RowOrigin,
): Omit<ImportCounts, "students"> {
  const statements = prepareSessionStatements(db, scope);
  const sequences = placesOf(plan);
  const changed = new Set<StudentScope>();
  const conflicts: ImportConflict[] = [];
  let [sessions, swings, readings, skipped] = [0, 0, 0, 0];
  plan.sessions.forEach(({ alias, session }, index) => {
    const student = scopes.get(alias);
    const sequence = sequences[index];
    if (!student || sequence === undefined) throw new Error(`no scope for ${alias}`);
    const { studentId } = student;
    const made = enterSession(statements, studentId, session, sequence, door, origin);
    sessions += made.sessions;
    swings += made.swings;
    readings += made.readings;
    skipped += made.skipped;
    const { day, clubGroup } = session;
    const { sessionId } = made;
    conflicts.push(...made.conflicts.map((one) => ({ ...one, alias, studentId, sessionId, day, clubGroup })));
    if (made.sessions + made.swings + made.readings + made.captures > 0) changed.add(student);
    door.onSettled?.(readings + skipped + conflicts.length);
  });
  for (const student of changed) updateRevision(db, student);
  return { sessions, swings, readings, skipped, conflicts };
}

// Every row of the import points to its batch, so the batch comes first.
function insertBatch(db: Database, scope: AcademyScope, plan: ImportPlan, door: ImportDoor, id: string): void {
  const { fileName, contentHash, form, rows, answers } = plan;
  const { academyId, userId } = scope;
  const said = { fileName, contentHash, form, rows, answers };
  db.orm
    .insert(importBatch)
    .values({ id, academyId, userId, ...said, readings: 0, createdAt: door.now, door: door.door ?? "page" })
    .run();
}

/** Aliases of a plan that mean nobody here, or several: somebody was renamed or added since the file was read. */
function unknownAliases(db: Database, scope: AcademyScope, plan: ImportPlan): ReadonlySet<string> {
  const bearers = new Map<string, Set<string>>();
  for (const { alias, id } of readStudentNames(db, scope))
    bearers.set(alias, (bearers.get(alias) ?? new Set()).add(id));
  const said = new Map((plan.whose ?? []).map(({ alias, studentId }) => [alias, studentId]));
  const fresh = new Set(plan.newStudents.map(({ alias }) => alias));
  const isKnown = (alias: string): boolean => {
    const ids = bearers.get(alias) ?? new Set();
    const whose = said.get(alias);
    return whose === undefined ? ids.size === 1 || (ids.size === 0 && fresh.has(alias)) : ids.has(whose);
  };
  return new Set(plan.sessions.map(({ alias }) => alias).filter((alias) => !isKnown(alias)));
}

/**
 * Everything in the plan that isn't on file yet, whole or not at all. What is on file stays as it is, the facts of a
 * session too; a reading with another value is handed back. The same content a second time changes nothing.
 */
export function insertImport(db: Database, scope: AcademyScope, plan: ImportPlan, door: ImportDoor): ImportInsert {
  return inTransaction(db, () => {
    const batch = readImportBatch(db, scope, plan.contentHash);
    if (batch) return { kind: "already-imported", batch };
    const unknown = unknownAliases(db, scope, plan);
    if (unknown.size > 0) return { kind: "unknown-students", aliases: [...unknown] };
    const batchId = door.batchId ?? door.newId();
    insertBatch(db, scope, plan, door, batchId);
    const { ids, added } = enterStudents(db, scope, plan, door, batchId);
    const scopes = new Map(
      [...new Set(plan.sessions.map(({ alias }) => alias))].map((alias) => [alias, door.scopeOf(ids.get(alias) ?? "")]),
    );
    const counts = enterSessions(db, scope, plan, scopes, door, { now: door.now, batchId });
    db.orm.update(importBatch).set({ readings: counts.readings }).where(eq(importBatch.id, batchId)).run();
    return { kind: "imported", batchId, students: added, ...counts };
  });
}
