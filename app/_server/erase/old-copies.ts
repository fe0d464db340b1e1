import { existsSync, readdirSync, rmSync, statSync } from "node:fs";
import path from "node:path";
import { backupMadeAt, manifestOf } from "@/db/backup";
import { type Database, openDatabase } from "@/db/client";
import { readAcademyIds } from "@/db/read/academies";
import { ERASING_THRESHOLDS } from "@/lib/verdict/erasing-thresholds";
import { readClock } from "../clock";
import { erasedListOf } from "./erased-list";

const DAY_MS = 24 * 3600 * 1000;

function isOld(file: string, now: Date): boolean {
  const madeAt = Date.parse(backupMadeAt(file) ?? "");
  const written = statSync(file).mtimeMs;
  // A copy that was copied on is as old as what it was copied from.
  const age = now.getTime() - (madeAt < written ? madeAt : written);
  return age > ERASING_THRESHOLDS.copyDays.value * DAY_MS;
}

function removeCopy(file: string): void {
  for (const each of [file, manifestOf(file), erasedListOf(file)]) rmSync(each, { force: true });
}

/** What a migration and a restore leave beside the data: `proofband.db.before-…`, `proofband.db.replaced-…`. */
function copiesBeside(database: string): string[] {
  const [folder, name] = [path.dirname(database), path.basename(database)];
  return readdirSync(folder)
    .filter((each) => each.startsWith(`${name}.before-`) || each.startsWith(`${name}.replaced-`))
    .filter((each) => !each.endsWith(".json"))
    .map((each) => path.join(folder, each));
}

/**
 * Removes copies beside the data that are older than copies are kept.
 *
 * @returns how many
 */
export function dropCopiesBeside(database: string, now = readClock()): number {
  const old = copiesBeside(database).filter((file) => isOld(file, now));
  for (const file of old) removeCopy(file);
  return old.length;
}

/** Removes what a killed restore or copy left beside the data; nothing else may be at work on them. */
export function dropLeftovers(database: string): void {
  const [folder, name] = [path.dirname(database), path.basename(database)];
  for (const each of readdirSync(folder))
    if (each.startsWith(`${name}.restoring`) || (each.startsWith(`${name}.before-`) && /\.part(\.|-|$)/.test(each)))
      rmSync(path.join(folder, each), { force: true });
}

function academyIn(copy: string): string | undefined {
  let db: Database | undefined;
  try {
    db = openDatabase(copy, "read");
    return readAcademyIds(db)[0];
  } catch {
    // What can't be read is nobody's to remove.
    return undefined;
  } finally {
    db?.close();
  }
}

/**
 * Copies of the same academy in a folder that are older than copies are kept, removed: only files that have their digests
 * beside them, as the backup makes them.
 *
 * @returns their names
 */
export function dropOldBackups(folder: string, academyId: string, now = readClock()): string[] {
  const old = readdirSync(folder)
    .map((name) => path.join(folder, name))
    .filter((file) => existsSync(manifestOf(file)) && isOld(file, now) && academyIn(file) === academyId);
  for (const file of old) removeCopy(file);
  return old;
}
