import { existsSync, mkdirSync } from "node:fs";
import path from "node:path";
import { type Database, openDatabase } from "@/db/client";
import { migrateDb } from "@/db/migrate";
import { readAcademyIds } from "@/db/read/academies";
import { type Holder, takeLock } from "./door/server-lock";
import { honourErasedList } from "./erase/honour-list";

/** The two data folders, which never meet: the demo's and the viewer's own academy's. */
export const ACADEMY_CHOICES = ["demo", "own"] as const;

export type AcademyChoice = (typeof ACADEMY_CHOICES)[number];

const FOLDERS: Readonly<Record<AcademyChoice, string>> = { demo: "demo", own: "academy" };

interface Opened {
  readonly handles: Map<AcademyChoice, Promise<Database>>;
  readonly files: Set<Database>;
  /** What is still to be written before the files are closed, by name. */
  readonly last: Map<string, () => void>;
  release: (() => void) | null;
}

// On the global object: the bundler may load this file more than once in one process, and one process opens a file once.
const KEY = Symbol.for("proofband.databases");
const shared = globalThis as { [KEY]?: Opened };

function opened(): Opened {
  shared[KEY] ??= { handles: new Map(), files: new Set(), last: new Map(), release: null };
  return shared[KEY];
}

/** Where everything that Proofband keeps lies. */
export function dataFolder(): string {
  // Not a folder of the program: the bundler must not gather its files.
  return path.resolve(/* turbopackIgnore: true */ process.env.PROOFBAND_DATA || "data");
}

export function databaseFile(choice: AcademyChoice): string {
  return path.join(dataFolder(), FOLDERS[choice], "proofband.db");
}

/** Makes a folder that only its owner can open. */
export function ensurePrivateFolder(folder: string): void {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
}

async function openMigrated(choice: AcademyChoice): Promise<Database> {
  ensurePrivateFolder(dataFolder());
  const db = openDatabase(databaseFile(choice));
  try {
    await migrateDb(db);
    honourErasedList(db);
  } catch (error) {
    db.close();
    throw error;
  }
  opened().files.add(db);
  return db;
}

/** An academy's database, made and brought up to date when it isn't there. */
export function openAcademyDatabase(choice: AcademyChoice): Promise<Database> {
  const { handles } = opened();
  const known = handles.get(choice);
  if (known) return known;
  const opening = openMigrated(choice);
  handles.set(choice, opening);
  // What failed once, a full disk say, may work the next time.
  opening.catch(() => handles.delete(choice));
  return opening;
}

/** An academy's database when there is one with an academy in it. */
export async function findAcademyDatabase(
  choice: AcademyChoice,
): Promise<{ readonly db: Database; readonly academyId: string } | null> {
  if (!existsSync(databaseFile(choice))) return null;
  const db = await openAcademyDatabase(choice);
  const academyId = readAcademyIds(db)[0];
  return academyId === undefined ? null : { db, academyId };
}

/** Has something done before the files are closed; another work of that name takes its place. */
export function beforeClosing(name: string, work: () => void): void {
  opened().last.set(name, work);
}

/** Closes what is open and gives the folder free. */
export function closeDatabases(): void {
  const { handles, files, last, release } = opened();
  for (const work of last.values()) work();
  for (const db of files) db.close();
  files.clear();
  handles.clear();
  release?.();
  opened().release = null;
}

/**
 * Takes the data folder for this server and opens what is there, so that a bad migration stops the start and not the
 * first request. Says who has the folder when another server does.
 */
export async function openForServing(port: number): Promise<Holder | null> {
  ensurePrivateFolder(dataFolder());
  const lock = takeLock(dataFolder(), port);
  if (lock.kind === "held") return lock.holder;
  opened().release = () => lock.release();
  for (const choice of ACADEMY_CHOICES) await findAcademyDatabase(choice);
  process.once("exit", closeDatabases);
  return null;
}
