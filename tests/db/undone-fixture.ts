import { digestTables } from "@/db/backup";
import type { Database } from "@/db/client";
import { insertImport } from "@/db/write/imports";
import type { ImportPlan } from "@/lib/domain/session-entry";
import { academyScope, studentScope } from "./academy-fixture";
import { planOf as firstPlan, importDoor } from "./filled-academy";

/** After the academy was filled. */
export const LATER = "2031-03-02T10:00:00.000Z";
/** After an import of `LATER`. */
export const LATEST = "2031-03-03T10:00:00.000Z";
export const scope = academyScope();
export const undoing = { now: LATEST, who: "Owner", scopeOf: (id: string) => studentScope(id) };
export const newcomer = { alias: "Nino", hand: "right", birthYear: 2017, consentGivenBy: "Mother" } as const;
export const measure = {
  kind: "measure",
  givenBy: "Father",
  giverIs: "guardian",
  from: "2031-03-02",
  until: null,
  withdrawnOn: null,
} as const;

/** The academy was filled from a file already; these are others. */
export const planOf: typeof firstPlan = (sessions) => ({ ...firstPlan(sessions), contentHash: "another file" });

/** What every table holds but the batches and how often students' data changed. */
export async function held(db: Database): Promise<unknown> {
  const { import_batch: _batches, student: _students, ...rest } = await digestTables(db);
  const people = db.sqlite.prepare("SELECT * FROM student ORDER BY id").all() as Record<string, unknown>[];
  return { rest, people: people.map(({ revision: _revision, ...person }) => person) };
}

/** Imports a plan at `LATER`, with consents for students on file. */
export function load(db: Database, plan: ImportPlan, prefix = "b", consents: readonly string[] = []) {
  const given = consents.map((studentId) => ({ studentId, consent: measure }));
  const made = insertImport(db, scope, plan, { ...importDoor(prefix, LATER), consents: given });
  if (made.kind !== "imported") throw new Error(made.kind);
  return made;
}
