import {
  chmodSync,
  closeSync,
  copyFileSync,
  existsSync,
  fsyncSync,
  linkSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
} from "node:fs";
import path from "node:path";
import { currentInstant } from "@/app/_server/clock";
import { type AcademyChoice, databaseFile, dataFolder, ensurePrivateFolder } from "@/app/_server/database";
import { takeLock } from "@/app/_server/door/server-lock";
import { erasedListOf, takeInErasedLists } from "@/app/_server/erase/erased-list";
import { honourErasedList } from "@/app/_server/erase/honour-list";
import { checkBackup, digestTables, manifestOf, type TableDigests } from "@/db/backup";
import { openDatabase } from "@/db/client";
import { migrateDb } from "@/db/migrate";
import { wordsFor } from "@/lib/words/catalogue";
import { countRows } from "./count-rows";
import { sayProblem } from "./say-problem";

const words = wordsFor("en");
const OPTIONS = ["--demo", "--replace", "--without-digests"];

class Refused extends Error {}

function refuse(key: string, args = {}): Refused {
  return new Refused(words.say(key, args));
}

function syncToDisk(target: string): void {
  const handle = openSync(target, "r");
  fsyncSync(handle);
  closeSync(handle);
}

// What a killed restore left: its journal would be taken for that of the file laid aside anew.
function removeLeftovers(part: string): void {
  const folder = path.dirname(part);
  for (const name of readdirSync(folder))
    if (name.startsWith(path.basename(part))) rmSync(path.join(folder, name), { force: true });
}

function sameRows(wanted: TableDigests, found: TableDigests): boolean {
  return Object.entries(wanted).every(
    ([table, digest]) => table === "sqlite_schema" || found[table]?.sha256 === digest.sha256,
  );
}

async function requireSound(copy: string, args: readonly string[]): Promise<TableDigests> {
  const check = await checkBackup(copy);
  if (check.kind === "unsound")
    throw refuse("restore.unsound", { problems: check.problems.map((each) => sayProblem(words, each)).join("; ") });
  if (check.against === "itself" && !args.includes("--without-digests")) {
    throw refuse("restore.noDigests", { digests: manifestOf(copy) });
  }
  return check.tables;
}

// The copy is opened, compared and brought to this version aside; only a whole one takes the name of the data.
// Whoever was erased since the copy was made is erased from it before it has the name of the data.
async function layAside(
  copy: string,
  file: string,
  wanted: TableDigests,
): Promise<{ readonly part: string; readonly erased: number }> {
  let erased = 0;
  const part = `${file}.restoring`;
  removeLeftovers(part);
  copyFileSync(copy, part);
  chmodSync(part, 0o600);
  const db = openDatabase(part);
  try {
    if (!sameRows(wanted, await digestTables(db))) throw refuse("restore.notSame");
    const migrated = await migrateDb(db);
    // The copy that is restored stays; one of its older form more is of no use.
    if (migrated.copy !== null) for (const file of [migrated.copy, manifestOf(migrated.copy)]) rmSync(file);
    erased = honourErasedList(db, erasedListOf(file));
    db.sqlite.pragma("wal_checkpoint(TRUNCATE)");
    db.sqlite.pragma("journal_mode = DELETE");
  } finally {
    db.close();
  }
  syncToDisk(part);
  return { part, erased };
}

/** Gives a file a second name; where the disk knows no links, copies it. */
function nameAgain(file: string, name: string): void {
  try {
    linkSync(file, name);
  } catch {
    copyFileSync(file, name);
    syncToDisk(name);
  }
}

// The data never go without a file of their name: a start in between would begin an empty academy.
function moveIn(part: string, file: string): string | null {
  let kept: string | null = null;
  if (existsSync(file)) {
    kept = `${file}.replaced-${currentInstant().replaceAll(":", "-")}`;
    // Opened and closed for its journal to be taken in: the file is kept alone.
    openDatabase(file).close();
    nameAgain(file, kept);
  }
  for (const rest of ["-wal", "-shm"]) rmSync(file + rest, { force: true });
  renameSync(part, file);
  syncToDisk(path.dirname(file));
  return kept;
}

async function restore(args: readonly string[]): Promise<void> {
  const choice: AcademyChoice = args.includes("--demo") ? "demo" : "own";
  const [copy, ...more] = args.filter((arg) => !OPTIONS.includes(arg));
  if (!copy || copy.startsWith("-") || more.length > 0) throw refuse("restore.usage");
  const file = databaseFile(choice);
  if (existsSync(file) && !args.includes("--replace")) throw refuse("restore.filled", { file });
  const tables = await requireSound(path.resolve(copy), args);
  ensurePrivateFolder(dataFolder());
  const lock = takeLock(dataFolder(), 0);
  if (lock.kind === "held") {
    throw refuse("restore.held", { pid: String(lock.holder.pid), port: String(lock.holder.port) });
  }
  try {
    ensurePrivateFolder(path.dirname(file));
    takeInErasedLists(file, path.resolve(copy));
    const { part, erased } = await layAside(path.resolve(copy), file, tables);
    const kept = moveIn(part, file);
    console.log(words.say("restore.done", { ...countRows(tables), file }));
    if (erased > 0) console.log(words.say("restore.erased", { count: erased }));
    if (kept) console.log(words.say("restore.kept", { file: kept }));
  } finally {
    lock.release();
  }
}

restore(process.argv.slice(2)).catch((error: unknown) => {
  const reason = error instanceof Error ? error.message : String(error);
  console.error(error instanceof Refused ? reason : words.say("restore.failed", { reason }));
  process.exitCode = 1;
});
