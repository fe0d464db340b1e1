import { type Database, openDatabase } from "@/db/client";
import { insertImport } from "@/db/write/imports";
import { mergeStudents } from "@/db/write/merge-students";
import { updateChangeUndone } from "@/db/write/record-changes";
import { splitSession } from "@/db/write/split-session";
import { undoImport } from "@/db/write/undo-import";
import { academyScope, NOW, openAcademy, studentScope } from "../db/academy-fixture";
import { importDoor, planOf, season } from "../db/filled-academy";

// What is done to an academy while it is killed: by the process that dies, and once more by the test that knows what comes of it.

/** Sessions, and swings of each: an import is written in some ten milliseconds, so that kills fall into it. */
export const SEASON = { sessions: 40, swings: 10 } as const;

/** Readings of such a season. */
export const SEASON_READINGS = SEASON.sessions * SEASON.swings * 3;

const NOTE = { who: "Owner", why: "killed", now: NOW } as const;

/** Ulla with a season on file, and Ferdi with none. */
export async function openSeason(file: string): Promise<Database> {
  const db = await openAcademy(file);
  const plan = planOf(season(SEASON.sessions, SEASON.swings).map((session) => ["Ulla", session]));
  if (insertImport(db, academyScope(), plan, importDoor()).kind !== "imported") throw new Error("not imported");
  db.close();
  return openDatabase(file);
}

/** Imports a season of a new student, as a batch of the alias's name. */
export function importSeason(db: Database, alias: string): string {
  const sessions = season(SEASON.sessions, SEASON.swings).map((session) => [alias, session] as const);
  const newStudents = [{ alias, hand: "right", birthYear: null, consentGivenBy: "Parent" }] as const;
  const plan = { ...planOf(sessions), contentHash: alias, newStudents };
  return insertImport(db, academyScope(), plan, { ...importDoor(`${alias}-`), batchId: alias }).kind;
}

export function undoSeason(db: Database, alias: string): string {
  const { scopeOf } = importDoor();
  return undoImport(db, academyScope(), alias, { now: NOW, who: "Owner", scopeOf }).kind;
}

/** Two swings of Ulla's first session become one of Ferdi's; says the number of the change. */
export function splitFirst(db: Database): number {
  const sessionId = db.sqlite.prepare<[], string>("SELECT id FROM session ORDER BY day, id").pluck().get() ?? "";
  const to = { newId: "split", day: "2031-01-01", clubGroup: "driver", club: null } as const;
  const wish = { sessionId, swings: [2, 3], turned: [], ...to };
  const made = splitSession(db, { from: studentScope(), to: studentScope("s2") }, wish, NOTE);
  if (made.kind !== "split") throw new Error(made.kind);
  return made.changeId;
}

/** Ulla turns out to be Ferdi; says the number of the change. */
export function mergeBoth(db: Database): number {
  const made = mergeStudents(db, { from: studentScope(), to: studentScope("s2") }, [], NOTE);
  if (made.kind !== "merged") throw new Error(made.kind);
  return made.changeId;
}

export function undoChange(db: Database, changeId: number): void {
  const undone = updateChangeUndone(db, studentScope(), changeId, NOTE);
  if (undone.kind !== "undone") throw new Error(JSON.stringify(undone));
}

/** The change that stands; undefined: none. */
export function openChange(db: Database): { readonly id: number; readonly kind: string } | undefined {
  return db.sqlite
    .prepare<[], { id: number; kind: string }>("SELECT id, kind FROM record_change WHERE undone_at IS NULL")
    .get();
}
