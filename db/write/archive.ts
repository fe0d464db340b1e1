import type { ArchivedReread, ArchivedStudent } from "@/lib/domain/archive";
import type { ArchivePlan } from "@/lib/domain/archive-plan";
import { endBroughtConsents } from "@/lib/domain/brought-consents";
import type { AcademyScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { readClubGrouping } from "../read/club-groups";
import { readImportBatch } from "../read/import-batches";
import { height, importBatch, student } from "../schema";
import { readBack, readBackItem } from "../schema-entry";
import { consent } from "../schema-privacy";
import { rereadDraw, rereadItem } from "../schema-rereads";
import { asking, goalBand } from "../schema-work";
import { enterArchivedHappenings, enterArchivedPlans, requireId } from "./archive-happenings";
import { enterArchivedRules } from "./archive-rules";
import { enterArchivedSessions, placedReadings } from "./archive-sessions";
import { enterCarried, type NewReader } from "./carried-looks";
import type { ImportInsert } from "./imports";
import { nameWithdrawn, type Stamp, takeInCharge } from "./students";

type Table =
  | "student"
  | "session"
  | "event"
  | "drill_assignment"
  | "goal_band"
  | "consent"
  | "practice"
  | "film_plan"
  | "read_back"
  | "drill"
  | "reread_draw";

/** What an archive comes with. */
type ArchiveStamp = Stamp & {
  readonly door: "archive";
  readonly batchId?: string | null;
  readonly who?: string;
  /** Among students of others the change of reader is dated; absent: it isn't. */
  readonly reader?: NewReader;
  /** Whether a student of that id was erased here: nobody bears the id again. */
  readonly isErased?: (studentId: string) => boolean;
};

/** Finds an id that is free: the one that the archive has, or a new one where that is taken. */
function idFinder(db: Database, { newId, isErased = () => false }: ArchiveStamp) {
  const prepare = (sql: string) => db.sqlite.prepare<[string], 1>(sql);
  const taken: Record<Table, ReturnType<typeof prepare>> = {
    student: prepare("SELECT 1 FROM student WHERE id = ?"),
    session: prepare("SELECT 1 FROM session WHERE id = ?"),
    event: prepare("SELECT 1 FROM event WHERE id = ?"),
    drill_assignment: prepare("SELECT 1 FROM drill_assignment WHERE id = ?"),
    goal_band: prepare("SELECT 1 FROM goal_band WHERE id = ?"),
    consent: prepare("SELECT 1 FROM consent WHERE id = ?"),
    practice: prepare("SELECT 1 FROM practice WHERE id = ?"),
    film_plan: prepare("SELECT 1 FROM film_plan WHERE id = ?"),
    read_back: prepare("SELECT 1 FROM read_back WHERE id = ?"),
    drill: prepare("SELECT 1 FROM drill WHERE id = ?"),
    reread_draw: prepare("SELECT 1 FROM reread_draw WHERE id = ?"),
  };
  return (table: Table, id: string): string =>
    taken[table].get(id) || (table === "student" && isErased(id)) ? newId() : id;
}

interface Work {
  readonly db: Database;
  readonly scope: AcademyScope;
  readonly stamp: ArchiveStamp;
  readonly batchId: string;
  readonly freeId: ReturnType<typeof idFinder>;
  /** Ids here by the ids of the archive. */
  readonly students: Map<string, string>;
  readonly sessions: Map<string, string>;
  readonly drills: ReadonlyMap<string, string>;
  /** Who reads from which day on; null: nothing says that readers change. */
  readonly reader: NewReader | null;
}

function enterReadBacks({ db, freeId, sessions }: Work, studentId: string, archived: ArchivedStudent): void {
  const { swingAt, readingAt } = placedReadings(db);
  for (const { items, ...facts } of archived.readBacks) {
    const id = freeId("read_back", facts.id);
    db.orm
      .insert(readBack)
      .values({ ...facts, id, studentId })
      .run();
    for (const { sessionId, swing, reading, ...item } of items) {
      const swingId = swingAt(requireId(sessions, sessionId), swing);
      const readingId = reading && readingAt(swingId, facts.fundamentalId, reading.reader, reading.reread);
      db.orm
        .insert(readBackItem)
        .values({ ...item, readBackId: id, swingId, readingId })
        .run();
    }
  }
}

function enterStudent(work: Work, archived: ArchivedStudent) {
  const { db, scope, batchId, freeId } = work;
  const { alias, birthYear, hand, zone, clubs, language, createdAt, departedOn } = archived;
  const studentId = freeId("student", archived.id);
  work.students.set(archived.id, studentId);
  const facts = { alias, birthYear, hand, zone, clubs, language, createdAt, departedOn, revision: 1 };
  db.orm
    .insert(student)
    .values({ id: studentId, academyId: scope.academyId, batchId, ...facts })
    .run();
  for (const row of archived.heights)
    db.orm
      .insert(height)
      .values({ ...row, studentId })
      .run();
  for (const row of archived.consents)
    db.orm
      .insert(consent)
      .values({ ...row, id: freeId("consent", row.id), studentId, batchId })
      .run();
  const entry = { studentId, batchId, grouping: readClubGrouping(db, scope), freeId };
  const { ids, ...counts } = enterArchivedSessions(db, entry, archived.sessions);
  for (const [before, now] of ids) work.sessions.set(before, now);
  enterArchivedHappenings(work, studentId, archived);
  for (const row of archived.askings)
    db.orm
      .insert(asking)
      .values({ ...row, studentId })
      .run();
  enterArchivedPlans(work, studentId, archived);
  enterReadBacks(work, studentId, archived);
  enterCarried(
    db,
    { studentId, batchId, stamp: work.stamp, sessions: work.sessions, reader: work.reader },
    archived.carried,
  );
  takeInCharge(db, scope, studentId, work.stamp);
  return { ...counts, sessions: archived.sessions.length };
}

function enterRereads(work: Work, rereads: readonly ArchivedReread[]): void {
  const { db, scope, freeId } = work;
  const { swingAt, readingAt } = placedReadings(db);
  const draws = new Map<string, string>();
  for (const { items, sameAs, ...facts } of rereads) {
    const id = freeId("reread_draw", facts.id);
    draws.set(facts.id, id);
    const twin = sameAs === null ? null : (draws.get(sameAs) ?? sameAs);
    db.orm
      .insert(rereadDraw)
      .values({ ...facts, id, academyId: scope.academyId, sameAs: twin })
      .run();
    for (const { studentId, sessionId, swing, reading, ...item } of items) {
      const place = { studentId: requireId(work.students, studentId), sessionId: requireId(work.sessions, sessionId) };
      const swingId = swingAt(place.sessionId, swing);
      const readingId = reading && readingAt(swingId, item.fundamentalId, reading.reader, reading.reread);
      db.orm
        .insert(rereadItem)
        .values({ ...item, ...place, drawId: id, swingId, readingId })
        .run();
    }
  }
}

/**
 * Writes what an archive adds, whole or not at all. Entered times, who and why stay those of the archive; what came with it
 * bears its import. The same content a second time changes nothing.
 *
 * @throws Error on a plan that names what it doesn't hold; nothing is written
 */
export function insertArchive(db: Database, scope: AcademyScope, plan: ArchivePlan, stamp: ArchiveStamp): ImportInsert {
  return inTransaction(db, () => {
    const batch = readImportBatch(db, scope, plan.contentHash);
    if (batch) return { kind: "already-imported", batch };
    const batchId = stamp.batchId ?? stamp.newId();
    const total = plan.students.flatMap(({ sessions }) => sessions.flatMap(({ swings }) => swings));
    const rows = total.reduce((sum, { readings }) => sum + readings.length, 0);
    const { fileName, contentHash } = plan;
    const facts = {
      fileName,
      contentHash,
      form: "long",
      rows,
      readings: rows,
      answers: JSON.stringify(stamp.who === undefined ? {} : { who: stamp.who }),
      door: stamp.door,
    } as const;
    db.orm
      .insert(importBatch)
      .values({ id: batchId, academyId: scope.academyId, userId: scope.userId, createdAt: stamp.now, ...facts })
      .run();
    const freeId = idFinder(db, stamp);
    const drills = enterArchivedRules(db, scope, plan, freeId);
    const isAmongOthers = plan.among === "others";
    const reader = isAmongOthers ? (stamp.reader ?? null) : null;
    const importDay = reader?.day ?? stamp.now.slice(0, 10);
    const students = isAmongOthers ? endBroughtConsents(plan.students, importDay) : plan.students;
    const ids = { students: new Map<string, string>(), sessions: new Map<string, string>(), drills };
    const work: Work = { db, scope, stamp, batchId, freeId, ...ids, reader };
    const counts = { students: plan.students.length, sessions: 0, swings: 0, readings: 0 };
    for (const archived of students) {
      const made = enterStudent(work, archived);
      counts.sessions += made.sessions;
      counts.swings += made.swings;
      counts.readings += made.readings;
    }
    for (const band of plan.rules.goalBands) {
      const studentId = band.studentId === null ? null : requireId(work.students, band.studentId);
      db.orm
        .insert(goalBand)
        .values({ ...band, id: freeId("goal_band", band.id), academyId: scope.academyId, studentId })
        .run();
    }
    enterRereads(work, plan.rereads);
    nameWithdrawn(db, batchId);
    return { kind: "imported", batchId, ...counts, skipped: 0, conflicts: [] };
  });
}
