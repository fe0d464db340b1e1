import { type Database, IN_MEMORY, openDatabase } from "@/db/client";
import { migrateDb } from "@/db/migrate";
import { insertAcademy } from "@/db/write/academies";
import { insertStudent, type Stamp } from "@/db/write/students";
import type { AcademyScope, PainScope, StudentScope } from "@/lib/domain/scope";
import type { EnteredReading, EnteredSession, EnteredSwing } from "@/lib/domain/session-entry";

export const NOW = "2031-03-01T10:00:00.000Z";

export function academyScope(academyId = "a1"): AcademyScope {
  return { academyId, userId: null, students: "all" } as unknown as AcademyScope;
}

export function painScope(studentId = "s1"): PainScope {
  return { studentId } as PainScope;
}

export function studentScope(studentId = "s1", academyId = "a1"): StudentScope {
  return { academyId, studentId } as StudentScope;
}

/** Ids in the order of asking: `x1`, `x2` … */
export function countingStamp(prefix = "x", now = NOW): Stamp {
  let count = 0;
  return {
    now,
    newId: () => {
      count += 1;
      return `${prefix}${count}`;
    },
  };
}

/** Academies `a1` (students `s1`, `s2`) and `a2` (student `t1`). */
export async function openAcademy(file: string = IN_MEMORY): Promise<Database> {
  const db = openDatabase(file);
  await migrateDb(db);
  for (const id of ["a1", "a2"]) {
    insertAcademy(db, {
      id,
      name: `Academy ${id}`,
      ownerName: "Owner",
      zone: "Europe/Vienna",
      locale: "en",
      kind: "own",
      fixedToday: null,
      seasonStart: "2031-01-01",
      createdAt: NOW,
    });
  }
  const stamp = countingStamp("consent");
  const consent = {
    kind: "measure",
    givenBy: "Parent",
    giverIs: "guardian",
    from: "2031-01-01",
    until: null,
    withdrawnOn: null,
  } as const;
  const student = { birthYear: 2016, hand: "left", zone: "Europe/Vienna", clubs: "7 iron" } as const;
  insertStudent(db, academyScope(), { id: "s1", alias: "Ulla", ...student }, consent, stamp);
  insertStudent(db, academyScope(), { id: "s2", alias: "Ferdi", ...student, birthYear: null }, consent, stamp);
  insertStudent(db, academyScope("a2"), { id: "t1", alias: "Ulla", ...student }, null, stamp);
  return db;
}

export function entered(
  value: number | null,
  fundamentalId: EnteredReading["fundamentalId"] = "hinge",
): EnteredReading {
  return { fundamentalId, value, typed: value === null ? "-" : `${value}`, unit: "deg", signRule: "neutral" };
}

export function swings(...values: readonly (number | null)[]): EnteredSwing[] {
  return values.map((value, index) => ({ number: index + 1, note: null, readings: [entered(value)] }));
}

export function sessionOn(day: string, change: Partial<EnteredSession> = {}): EnteredSession {
  return {
    day,
    sequence: 1,
    clubGroup: "iron",
    club: null,
    reader: "Coach",
    circumstance: "unaided",
    aid: null,
    stanceWidthCm: null,
    daysSincePractice: null,
    marks: [],
    note: null,
    solid: null,
    balls: null,
    setAsideReason: null,
    captures: [],
    statedCaptureSds: [],
    swings: swings(80, 82, 84),
    ...change,
  };
}

export function countRows(db: Database, table: string): number {
  return db.sqlite.prepare<[], number>(`SELECT count(*) FROM "${table}"`).pluck().get() ?? 0;
}

export function revisionOf(db: Database, studentId = "s1"): number | undefined {
  return db.sqlite.prepare<[string], number>("SELECT revision FROM student WHERE id = ?").pluck().get(studentId);
}
