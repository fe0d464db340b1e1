import { clearTraces } from "@/app/_server/erase/clear-traces";
import { eraseGroup } from "@/app/_server/erase/erase-group";
import { honourErasedList } from "@/app/_server/erase/honour-list";
import { type Database, openDatabase } from "@/db/client";
import { readErasedGroup } from "@/db/read/erased-group";
import { wordsFor } from "@/lib/words/catalogue";
import { studentScope } from "../db/academy-fixture";
import { importSeason } from "./killed-acts";

// Adds one student after another with a season, and erases each, until it is killed; says each erasure that was acknowledged.

const [, , file = "", run = ""] = process.argv;

async function say(line: string): Promise<void> {
  process.stdout.write(`${line}\n`);
  // Lets the line out: what a killed process has not said was not acknowledged.
  await new Promise((resolve) => setImmediate(resolve));
}

/** Whom the process before was killed over. */
function leftOver(db: Database): string | undefined {
  return db.sqlite.prepare<[], string>("SELECT alias FROM student WHERE alias LIKE 't%x%'").pluck().get();
}

async function main(): Promise<void> {
  const db = openDatabase(file);
  honourErasedList(db);
  await say("begun");
  for (let count = 0; ; count++) {
    const alias = leftOver(db) ?? `${run}x${count}`;
    if (leftOver(db) === undefined) importSeason(db, alias);
    const id = db.sqlite.prepare<[string], string>("SELECT id FROM student WHERE alias = ?").pluck().get(alias) ?? "";
    await say(`begins ${alias}`);
    const note = { who: "Director", reason: "asked", words: wordsFor("en") } as const;
    if (!eraseGroup(db, readErasedGroup(db, studentScope(id)), note)) throw new Error(`not on file: ${alias}`);
    clearTraces(db);
    await say(`acknowledged ${alias} ${id}`);
  }
}

void main();
