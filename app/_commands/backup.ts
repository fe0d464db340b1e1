import { existsSync } from "node:fs";
import path from "node:path";
import { type AcademyChoice, databaseFile, dataFolder } from "@/app/_server/database";
import { backupTo, manifestOf } from "@/db/backup";
import { openDatabase } from "@/db/client";
import { wordsFor } from "@/lib/words/catalogue";
import { countRows } from "./count-rows";

const words = wordsFor("en");

function refuse(key: string, args = {}): number {
  console.error(words.say(key, args));
  return 1;
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
    const tables = await backupTo(db, file);
    console.log(words.say("backup.done", { ...countRows(tables), file, digests: manifestOf(file) }));
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
