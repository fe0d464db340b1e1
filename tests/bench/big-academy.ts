import { inTransaction, openDatabase } from "@/db/client";
import { migrateDb } from "@/db/migrate";
import { insertAcademy } from "@/db/write/academies";
import { insertSession } from "@/db/write/sessions";
import { insertStudent } from "@/db/write/students";
import type { FundamentalId } from "@/lib/domain/fundamental";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import { enterStudent } from "@/seed/demo-entries";
import {
  DEMO_LAST_DAY,
  DEMO_SEASON_START,
  DEMO_TODAY,
  plainSession,
  type StudentPlan,
  sideTrack,
} from "@/seed/demo-plan";

const READ: readonly (readonly [FundamentalId, number])[] = [
  ["trail-v", 55],
  ["lead-v", 70],
  ["foot-line", 1],
  ["setup-tilt", 6],
  ["posture-bend", 37],
  ["ball-position", 57],
  ["hinge", 88],
  ["hip-sway", 3],
  ["head-drift", 5],
  ["impact-tilt", 14],
];

const SESSIONS = 25;
const SWINGS = 5;

function bigPlan(number: number): StudentPlan {
  const gap = DEMO_LAST_DAY / SESSIONS;
  return {
    id: `s${number}`,
    alias: `Bench ${number}`,
    birthYear: 2000,
    hand: "right",
    zone: "Europe/Berlin",
    club: "7-iron",
    clubGroup: "iron",
    signRule: "neutral",
    wildness: 1,
    correlation: 0.1,
    consentGivenBy: "on paper",
    sessions: Array.from({ length: SESSIONS }, (_, i) => plainSession(Math.floor(i * gap), SWINGS)),
    tracks: READ.map(([id, level]) => ({ ...sideTrack(id, level), missed: 0, notMeasurable: 0 })),
    heights: [],
    events: [],
    assignments: [],
    corrections: [],
    expected: [],
  };
}

/** An academy of so many readings at least, 25 sessions of 5 swings and 10 fundamentals a student; it isn't judged. */
export async function fillBigAcademy(
  file: string,
  readings: number,
): Promise<{ readonly students: number; readonly readings: number }> {
  const students = Math.ceil(readings / (SESSIONS * SWINGS * READ.length));
  const db = openDatabase(file);
  await migrateDb(db);
  const scope = { academyId: "bench", userId: null, students: "all" } as unknown as AcademyScope;
  const now = `${DEMO_SEASON_START}T07:00:00.000Z`;
  inTransaction(db, () => {
    insertAcademy(db, {
      id: "bench",
      name: "Bench",
      ownerName: "Bench",
      zone: "Europe/Berlin",
      locale: "en",
      kind: "demo",
      fixedToday: DEMO_TODAY,
      seasonStart: DEMO_SEASON_START,
      createdAt: now,
    });
    for (let number = 1000; number < 1000 + students; number++) {
      const { student, consents, sessions } = enterStudent(bigPlan(number), 3);
      insertStudent(db, scope, student, consents[0] ?? null, { now, newId: () => `c${number}` });
      for (const { id, session } of sessions)
        insertSession(db, { ...scope, studentId: student.id } as unknown as StudentScope, session, {
          now,
          newId: () => id,
          batchId: null,
        });
    }
  });
  const written = db.sqlite.prepare<[], number>("SELECT count(*) FROM reading").pluck().get() ?? 0;
  db.sqlite.exec("ANALYZE");
  db.close();
  return { students, readings: written };
}
