import { databaseFile } from "@/app/_server/database";
import type { Viewer } from "@/app/_server/gate";
import { loadRules } from "@/app/_server/roster/load-verdicts";
import { type Database, openDatabase } from "@/db/client";
import { admitFilmed } from "./corrected-season";
import { startAcademy } from "./own-academy-data";

/** An academy with one student on film, judged, whose server waits for the disk no longer than a test may. */
export async function startImpatient() {
  const academy = await startAcademy();
  const mine = await admitFilmed(academy.viewer, "Zephyrine");
  await loadRules(academy.viewer);
  // A wait of five seconds a try is for people, not for a test.
  academy.viewer.db.sqlite.pragma("busy_timeout = 20");
  return { ...academy, mine };
}

let other: Database | null = null;

/** Another handle holds the right to write, as a backup or a command does. */
export function lockDisk(): void {
  other = openDatabase(databaseFile("own"));
  other.sqlite.exec("BEGIN IMMEDIATE");
}

/** The file may grow no more. */
export function fillDisk({ db: { sqlite } }: Viewer): void {
  // Free pages would be taken first.
  sqlite.exec("VACUUM");
  sqlite.pragma(`max_page_count = ${sqlite.pragma("page_count", { simple: true })}`);
}

/** The file can't be written to. */
export function closeDisk({ db: { sqlite } }: Viewer): void {
  sqlite.pragma("query_only = 1");
}

/** The disk takes what it is given again. */
export function freeDisk({ db }: Viewer): void {
  if (other?.sqlite.inTransaction) other.sqlite.exec("ROLLBACK");
  other?.close();
  other = null;
  db.sqlite.pragma("query_only = 0");
  db.sqlite.pragma("max_page_count = 1000000");
}
