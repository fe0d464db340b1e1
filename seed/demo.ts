import { type Database, inTransaction, openDatabase } from "@/db/client";
import { migrateDb } from "@/db/migrate";
import { readAcademyIds } from "@/db/read/academies";
import { readReadingsInForce } from "@/db/read/readings";
import { insertAcademy } from "@/db/write/academies";
import { insertAssignment, insertDrill } from "@/db/write/drills";
import { insertEvent } from "@/db/write/events";
import { insertGoalBand } from "@/db/write/goal-bands";
import { insertOwnFundamental } from "@/db/write/own-fundamentals";
import { insertCorrection } from "@/db/write/readings";
import { insertSession } from "@/db/write/sessions";
import { insertConsent, insertHeight, insertStudent } from "@/db/write/students";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import { demoEntries } from "./demo-academy";
import { insertDemoDecisions } from "./demo-decisions";
import { DEMO_BANDS, DEMO_DRILLS, LEAD_HEEL } from "./demo-drills";
import type { DemoStudent } from "./demo-entries";
import { insertDemoHappenings } from "./demo-happenings";
import { DEMO_READER, DEMO_SEASON_START, DEMO_TODAY } from "./demo-plan";
import { insertDemoRereads } from "./demo-rereads";

const ACADEMY = "demo";
const scope = { academyId: ACADEMY, userId: null, students: "all" } as unknown as AcademyScope;

function studentScope(studentId: string): StudentScope {
  return { academyId: ACADEMY, studentId } as StudentScope;
}

const morning = (day: string): string => `${day}T07:00:00.000Z`;
const evening = (day: string): string => `${day}T18:00:00.000Z`;

function insertRules(db: Database): void {
  const now = morning(DEMO_SEASON_START);
  insertAcademy(db, {
    id: ACADEMY,
    name: "The Two Larches",
    ownerName: DEMO_READER,
    zone: "Europe/Berlin",
    locale: "en",
    kind: "demo",
    fixedToday: DEMO_TODAY,
    seasonStart: DEMO_SEASON_START,
    createdAt: now,
  });
  insertOwnFundamental(db, scope, { id: LEAD_HEEL.id, definition: JSON.stringify(LEAD_HEEL) }, now);
  for (const drill of DEMO_DRILLS) insertDrill(db, scope, drill);
}

function insertPeople(db: Database, students: readonly DemoStudent[]): void {
  const now = morning(DEMO_SEASON_START);
  for (const { student, consents, heights, events, assignments } of students) {
    insertStudent(db, scope, student, null, { now, newId: () => student.id });
    const own = studentScope(student.id);
    for (const consent of consents)
      insertConsent(db, own, consent, { now, newId: () => `c${student.id.slice(1)}-${consent.kind}` });
    for (const height of heights) insertHeight(db, own, height);
    for (const event of events) insertEvent(db, own, event);
    for (const assignment of assignments) insertAssignment(db, own, assignment);
  }
  for (const { id, ...band } of DEMO_BANDS)
    insertGoalBand(db, scope, band, { now: morning(band.from), newId: () => id });
}

/** Sessions as they came in over the season, student after student on one day. */
function insertFilms(db: Database, students: readonly DemoStudent[]): number {
  const films = students
    .flatMap(({ student, sessions }) => sessions.map((film) => ({ ...film, studentId: student.id })))
    .sort((a, b) => (a.session.day < b.session.day ? -1 : a.session.day > b.session.day ? 1 : 0));
  for (const { id, session, studentId } of films) {
    const stamp = { now: evening(session.day), newId: () => id, batchId: null };
    const made = insertSession(db, studentScope(studentId), session, stamp);
    if (made.kind !== "inserted") throw new Error(`there is such a session: ${id}`);
  }
  return films.length;
}

function insertMends(db: Database, students: readonly DemoStudent[]): void {
  for (const { student, corrections } of students) {
    const own = studentScope(student.id);
    for (const { sessionId, swing, fundamentalId, value, typed, who, why, day } of corrections) {
      const reading = readReadingsInForce(db, own, { fundamentalId }).find(
        (each) => each.sessionId === sessionId && each.swing === swing,
      );
      if (reading === undefined) throw new Error(`nothing to put right in ${sessionId}`);
      insertCorrection(db, own, { readingId: reading.id, value, typed, who, why, now: evening(day) });
    }
  }
}

async function fill(file: string): Promise<void> {
  const db = openDatabase(file);
  try {
    await migrateDb(db);
    if (readAcademyIds(db).length > 0) {
      console.log("The demo academy is there already; nothing was changed.");
      return;
    }
    const students = demoEntries();
    const films = inTransaction(db, () => {
      insertRules(db);
      insertPeople(db, students);
      const count = insertFilms(db, students);
      insertMends(db, students);
      insertDemoRereads(db, scope);
      insertDemoHappenings(db, studentScope, (id) =>
        (students.find(({ student }) => student.id === id)?.sessions ?? []).map(({ session }) => session.day),
      );
      insertDemoDecisions(db, studentScope);
      return count;
    });
    db.sqlite.exec("ANALYZE");
    console.log(`The demo academy is in place: ${students.length} students, ${films} sessions, today ${DEMO_TODAY}.`);
  } finally {
    db.close();
  }
}

fill(`${process.env.PROOFBAND_DATA || "data"}/demo/proofband.db`).catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 1;
});
