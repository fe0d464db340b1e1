import { existsSync } from "node:fs";
import path from "node:path";
import { currentInstant } from "@/app/_server/clock";
import { type AcademyChoice, databaseFile, dataFolder } from "@/app/_server/database";
import { copyErasedList, erasedListOf } from "@/app/_server/erase/erased-list";
import { dropOldBackups } from "@/app/_server/erase/old-copies";
import { isClockInDoubt } from "@/app/_server/keeping/watch-clock";
import { backupTo, manifestOf } from "@/db/backup";
import { type Database, openDatabase } from "@/db/client";
import { readAcademyIds } from "@/db/read/academies";
import { ERASING_THRESHOLDS } from "@/lib/verdict/erasing-thresholds";
import { wordsFor } from "@/lib/words/catalogue";
import { countRows } from "./count-rows";

const words = wordsFor("en");

function refuse(key: string, args = {}): number {
  console.error(words.say(key, args));
  return 1;
}

// Only now that a new copy is there, and not by a clock that has leapt.
function dropOld(folder: string, db: Database): void {
  const academyId = readAcademyIds(db)[0];
  if (academyId === undefined || isClockInDoubt({ db, scope: { academyId } })) return;
  for (const file of dropOldBackups(folder, academyId))
    console.log(words.say("backup.old-gone", { file, days: ERASING_THRESHOLDS.copyDays.value }));
}

async function backup(args: readonly string[]): Promise<number> {
  const choice: AcademyChoice = args.includes("--demo") ? "demo" : "own";
  const [target, ...more] = args.filter((arg) => arg !== "--demo");
  if (!target || target.startsWith("-") || more.length > 0) return refuse("backup.usage");
  const file = path.resolve(target);
  if (existsSync(file)) return refuse("backup.exists", { file });
  if (!existsSync(databaseFile(choice))) return refuse("backup.none", { folder: dataFolder() });
  const db = openDatabase(databaseFile(choice), "read");
  try {
    const tables = await backupTo(db, file, currentInstant());
    console.log(words.say("backup.done", { ...countRows(tables), file, digests: manifestOf(file) }));
    copyErasedList(db.file, file);
    if (existsSync(erasedListOf(file))) console.log(words.say("backup.list", { file: erasedListOf(file) }));
    dropOld(path.dirname(file), db);
    return 0;
  } finally {
    db.close();
  }
}

backup(process.argv.slice(2)).then(
  (status) => {
    process.exitCode = status;
  },
  (error: unknown) => {
    process.exitCode = refuse("backup.failed", { reason: error instanceof Error ? error.message : String(error) });
  },
);
