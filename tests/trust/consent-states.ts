import { randomUUID } from "node:crypto";
import { drawAgain } from "@/app/_server/reread/reread-desk";
import { startReadBack } from "@/app/_server/season/read-back-desk";
import { digestTables } from "@/db/digest";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { admitFilmed, admitNew } from "../app/server/corrected-season";
import { enterAsOwner, startAcademy } from "../app/server/own-academy-data";
import { enterFilm, filmDays } from "../app/server/reread-season";
import type { DoorCase } from "./consent-doors";
import { formOf } from "./own-academy";

/** An academy in which everything that a door needs was begun while all was well. */
export async function startDoorCase(
  alias: string,
): Promise<{ readonly at: DoorCase; readonly folder: string; remove(): void }> {
  const academy = await startAcademy();
  const viewer = await enterAsOwner(academy.viewer);
  const mine = await admitFilmed(viewer, alias);
  const other = await admitNew(viewer, "Lark", "right");
  const film = { id: "larks", day: filmDays(viewer)[0] ?? "", reference: null, now: new Date().toISOString() };
  enterFilm(viewer, other.student, film, [81, 82]);
  const draw = drawAgain(viewer, formOf({ fundamental: "hinge", level: "b", reader: viewer.name, count: "5" }));
  const back = startReadBack(mine, formOf({ fundamental: "hip-sway", reader: viewer.name, each: "1", films: "film2" }));
  if (draw.kind !== "drawn" || back.kind !== "started") throw new Error("nothing was drawn");
  const at = { viewer, mine, alias, other, othersSession: "larks", ...draw, ...back };
  return { at, folder: academy.folder, remove: academy.remove };
}

/** So many days before today; a negative number: after it. */
export function dayBefore({ viewer }: DoorCase, days: number): string {
  return dayFromNumber(dayNumber(viewer.today) - days);
}

/** Year of birth of somebody for whom a guardian speaks, whenever the tests run. */
const CHILD = new Date().getFullYear() - 12;

type Ago = (days: number) => string;
/** Giver, first day, last day and day of withdrawal. */
type Row = readonly [string, string, string | null, string | null];

/** How a consent to measure and share may stand, as rows on file. */
export const STATES: Readonly<Record<string, { readonly rows: (ago: Ago) => readonly Row[]; readonly born: number }>> =
  {
    none: { rows: () => [], born: CHILD },
    withdrawn: { rows: (ago) => [["guardian", ago(90), null, ago(3)]], born: CHILD },
    lapsed: { rows: (ago) => [["guardian", ago(400), ago(1), null]], born: CHILD },
    "own-age": { rows: (ago) => [["guardian", ago(90), null, null]], born: 1990 },
    "not-yet": { rows: (ago) => [["guardian", ago(-5), null, null]], born: CHILD },
  };

/** Puts the consents of the one with films as a state has them. */
export function putConsent(at: DoorCase, state: string): void {
  const { sqlite } = at.viewer.db;
  const { studentId } = at.mine.student;
  const { rows, born } = STATES[state] ?? { rows: () => [], born: CHILD };
  sqlite.prepare("DELETE FROM consent WHERE student_id = ?").run(studentId);
  sqlite.prepare("UPDATE student SET birth_year = ? WHERE id = ?").run(born, studentId);
  for (const kind of ["measure", "share"])
    for (const row of rows((days) => dayBefore(at, days)))
      sqlite
        .prepare(
          `INSERT INTO consent (id, student_id, kind, given_by, giver_is, from_day, until_day, withdrawn_on, recorded_at)
           VALUES (?, ?, ?, 'mother', ?, ?, ?, ?, ?)`,
        )
        .run(randomUUID(), studentId, kind, ...row, new Date().toISOString());
}

/** Everything on file but drafts, receipts of forms and keys of programs. */
export async function heldRecords(at: DoorCase) {
  const { draft: _drafts, access_token: _keys, form_receipt: _receipts, ...rest } = await digestTables(at.viewer.db);
  return rest;
}
