import {
  chmodSync,
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import path from "node:path";
import Sqlite from "better-sqlite3";
import type { Database } from "./client";
import { digestConnection, digestDefinitions, type TableDigests, withSnapshot } from "./digest";

export { digestTables, type TableDigest, type TableDigests } from "./digest";

/** What is wrong with a copy; `differs` and `missing` name tables, `file-changed` a change that no row shows. */
export type CopyProblem =
  | { readonly kind: "unreadable"; readonly message: string }
  | { readonly kind: "integrity"; readonly message: string }
  | { readonly kind: "foreign-key"; readonly table: string; readonly rows: number }
  | { readonly kind: "differs"; readonly table: string }
  | { readonly kind: "missing"; readonly table: string }
  | { readonly kind: "file-changed" };

export type CopyCheck =
  | { readonly kind: "sound"; readonly tables: TableDigests; readonly against: "manifest" | "itself" }
  | { readonly kind: "unsound"; readonly problems: readonly CopyProblem[] };

interface Manifest {
  readonly file: string;
  readonly tables: TableDigests;
  /** ISO, in UTC; absent: nobody said when, or an older version made it. */
  readonly madeAt?: string;
}

/** Where the digests of a copy lie: beside it. */
export function manifestOf(copy: string): string {
  return `${copy}.digests.json`;
}

function syncToDisk(target: string): void {
  const handle = openSync(target, "r");
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

async function digestFile(file: string): Promise<string> {
  return Buffer.from(await crypto.subtle.digest("SHA-256", readFileSync(file))).toString("hex");
}

function readManifest(copy: string): Manifest | undefined {
  const file = manifestOf(copy);
  return existsSync(file) ? (JSON.parse(readFileSync(file, "utf8")) as Manifest) : undefined;
}

/** When a copy was made, as the digests beside it say: copying the file renews its own time. Null: they don't say. */
export function backupMadeAt(copy: string): string | null {
  try {
    return readManifest(copy)?.madeAt ?? null;
  } catch {
    // Digests that can't be read are found out where a copy is checked.
    return null;
  }
}

function soundnessProblems(sqlite: Sqlite.Database): CopyProblem[] {
  const integrity = sqlite.prepare<[], string>("SELECT integrity_check FROM pragma_integrity_check").pluck().all();
  const broken = sqlite
    .prepare<[], { table: string; rows: number }>(
      `SELECT "table", count(*) AS rows FROM pragma_foreign_key_check GROUP BY "table"`,
    )
    .all();
  return [
    ...integrity.filter((message) => message !== "ok").map((message): CopyProblem => ({ kind: "integrity", message })),
    ...broken.map((row): CopyProblem => ({ kind: "foreign-key", table: row.table, rows: row.rows })),
  ];
}

function differences(found: TableDigests, expected: TableDigests): CopyProblem[] {
  return Object.entries(expected).flatMap(([table, digest]): CopyProblem[] => {
    const other = found[table];
    if (!other) return [{ kind: "missing", table }];
    return other.rows === digest.rows && other.sha256 === digest.sha256 ? [] : [{ kind: "differs", table }];
  });
}

async function checkAgainst(file: string, manifest: Manifest | undefined): Promise<CopyCheck> {
  const problems: CopyProblem[] = [];
  let tables: TableDigests = {};
  if (!existsSync(file)) return { kind: "unsound", problems: [{ kind: "unreadable", message: "no such file" }] };
  if (manifest && (await digestFile(file)) !== manifest.file) problems.push({ kind: "file-changed" });
  try {
    const sqlite = new Sqlite(file, { readonly: true, fileMustExist: true });
    try {
      problems.push(...soundnessProblems(sqlite));
      tables = { ...(await digestConnection(sqlite)), ...(await digestDefinitions(sqlite)) };
    } finally {
      sqlite.close();
    }
    if (manifest) problems.push(...differences(tables, manifest.tables));
  } catch (error) {
    problems.push({ kind: "unreadable", message: error instanceof Error ? error.message : String(error) });
  }
  if (problems.length > 0) return { kind: "unsound", problems };
  return { kind: "sound", tables, against: manifest ? "manifest" : "itself" };
}

/** Opens a copy and looks at every row. With the digests beside it, a single changed bit is found. */
export async function checkBackup(file: string): Promise<CopyCheck> {
  try {
    return await checkAgainst(file, readManifest(file));
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    return { kind: "unsound", problems: [{ kind: "unreadable", message }] };
  }
}

/**
 * Copies the rows of one moment while others write, opens the copy and compares every table. A copy under the wanted
 * name is always a checked one: until then it bears another name.
 *
 * @param madeAt the present instant, to be kept beside the copy
 * @throws Error when the copy isn't sound; nothing stays under the wanted name
 */
export async function backupTo(db: Database, destination: string, madeAt?: string): Promise<TableDigests> {
  mkdirSync(path.dirname(destination), { recursive: true, mode: 0o700 });
  const part = `${destination}.part`;
  for (const leftover of [part, `${part}-wal`, `${part}-shm`, `${part}-journal`]) rmSync(leftover, { force: true });
  closeSync(openSync(part, "a", 0o600));
  chmodSync(part, 0o600);
  const expected = await withSnapshot(db, async (sqlite) => {
    await sqlite.backup(part);
    return { ...(await digestConnection(sqlite)), ...(await digestDefinitions(sqlite)) };
  });
  // One file instead of three: a copy must be whole when it is carried away alone.
  const copy = new Sqlite(part);
  try {
    copy.pragma("journal_mode = DELETE");
  } finally {
    copy.close();
  }
  const manifest: Manifest = { file: await digestFile(part), tables: expected, madeAt };
  const check = await checkAgainst(part, manifest);
  if (check.kind === "unsound") {
    rmSync(part, { force: true });
    throw new Error(`copy is not sound: ${JSON.stringify(check.problems)}`);
  }
  writeFileSync(`${part}.json`, JSON.stringify(manifest), { mode: 0o600 });
  syncToDisk(part);
  syncToDisk(`${part}.json`);
  // The digests first: a process killed in between leaves no copy that nothing can be compared with.
  renameSync(`${part}.json`, manifestOf(destination));
  renameSync(part, destination);
  syncToDisk(path.dirname(destination));
  return expected;
}
