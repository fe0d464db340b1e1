import { databaseFile } from "@/app/_server/database";
import type { Viewer } from "@/app/_server/gate";
import { type Database, openDatabase } from "@/db/client";

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

/** The disk takes what it is given again. */
export function freeDisk({ db }: Viewer): void {
  if (other?.sqlite.inTransaction) other.sqlite.exec("ROLLBACK");
  other?.close();
  other = null;
  db.sqlite.pragma("max_page_count = 1000000");
}
