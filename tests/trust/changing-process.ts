import path from "node:path";
import { backupTo } from "@/db/backup";
import { type Database, openDatabase } from "@/db/client";
import { importSeason, mergeBoth, openChange, splitFirst, undoChange, undoSeason } from "./killed-acts";

// Changes the academy of a file, one thing after another until it is killed, and says each that was acknowledged.

const [, , act = "", file = "", run = ""] = process.argv;

async function say(line: string): Promise<void> {
  process.stdout.write(`${line}\n`);
  // Lets the line out: what a killed process has not said was not acknowledged.
  await new Promise((resolve) => setImmediate(resolve));
}

async function importAndUndo(db: Database, count: number): Promise<void> {
  const alias = `${run}x${count}`;
  await say(`acknowledged ${importSeason(db, alias)} ${alias}`);
  await say(`acknowledged ${undoSeason(db, alias)} ${alias}`);
}

async function changeAndUndo(db: Database, count: number): Promise<void> {
  // What the process before left standing is undone first.
  const changeId = openChange(db)?.id ?? (count % 2 === 0 ? splitFirst(db) : mergeBoth(db));
  await say(`acknowledged made ${changeId}`);
  undoChange(db, changeId);
  await say(`acknowledged undone ${changeId}`);
}

async function copyOnce(db: Database, count: number): Promise<void> {
  const name = `${run}x${count}.db`;
  await backupTo(db, path.join(path.dirname(file), "copies", name));
  await say(`acknowledged copied ${name}`);
}

const ACTS = { undo: importAndUndo, records: changeAndUndo, backup: copyOnce } as const;

async function main(): Promise<void> {
  const once = ACTS[act as keyof typeof ACTS];
  if (!once) throw new RangeError(`no such act: ${act}`);
  const db = openDatabase(file);
  await say("begun");
  for (let count = 0; ; count++) await once(db, count);
}

void main();
