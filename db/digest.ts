import type Sqlite from "better-sqlite3";
import { type Database, IN_MEMORY, openDatabase } from "./client";

/** What a table holds: the number of its rows and a SHA-256 over all of them in the order of its key. */
export interface TableDigest {
  readonly rows: number;
  readonly sha256: string;
}

export type TableDigests = Readonly<Record<string, TableDigest>>;

const ROWS_PER_PART = 4096;

function quoted(name: string): string {
  return `"${name.replaceAll('"', '""')}"`;
}

/** Names of the tables in alphabetical order, without SQLite's own. */
export function readTableNames(sqlite: Sqlite.Database): string[] {
  return sqlite
    .prepare<[], string>(
      "SELECT name FROM sqlite_schema WHERE type = 'table' AND substr(name, 1, 7) <> 'sqlite_' ORDER BY name",
    )
    .pluck()
    .all();
}

function orderedRows(sqlite: Sqlite.Database, table: string): Sqlite.Statement<[], unknown[]> {
  const columns = sqlite
    .prepare<[string], { name: string; pk: number }>("SELECT name, pk FROM pragma_table_info(?)")
    .all(table);
  if (columns.length === 0) throw new Error(`no such table: ${table}`);
  const names = columns.map((column) => quoted(column.name));
  const key = columns.filter((column) => column.pk > 0).sort((a, b) => a.pk - b.pk);
  const order = [...key.map((column) => quoted(column.name)), ...names].join(", ");
  return sqlite.prepare<[], unknown[]>(`SELECT ${names.join(", ")} FROM ${quoted(table)} ORDER BY ${order}`).raw();
}

async function sha256(text: string): Promise<string> {
  const bytes = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  return Buffer.from(bytes).toString("hex");
}

async function digestRows(statement: Sqlite.Statement<[], unknown[]>): Promise<TableDigest> {
  let rows = 0;
  let chain = "";
  let part: string[] = [];
  for (const row of statement.iterate()) {
    rows += 1;
    part.push(JSON.stringify(row));
    if (part.length === ROWS_PER_PART) {
      chain = await sha256(`${chain}\n${part.join("\n")}`);
      part = [];
    }
  }
  return { rows, sha256: await sha256(`${chain}\n${part.join("\n")}`) };
}

/** Digests over one connection that nobody else uses, so that the rows are those of one moment. */
export async function digestConnection(
  sqlite: Sqlite.Database,
  tables: readonly string[] = readTableNames(sqlite),
): Promise<TableDigests> {
  const digests: Record<string, TableDigest> = {};
  for (const table of tables) digests[table] = await digestRows(orderedRows(sqlite, table));
  return digests;
}

/** Digest of the tables' definitions, under the name that SQLite gives to their list. */
export async function digestDefinitions(sqlite: Sqlite.Database): Promise<TableDigests> {
  const statement = sqlite
    .prepare<[], unknown[]>("SELECT type, name, tbl_name, sql FROM sqlite_schema ORDER BY type, name")
    .raw();
  return { sqlite_schema: await digestRows(statement) };
}

/**
 * Runs the work on the rows of one moment. A file is read through a connection of its own that holds the moment while
 * others write; a database in memory has one connection only, so nobody may write meanwhile.
 */
export async function withSnapshot<T>(db: Database, work: (sqlite: Sqlite.Database) => Promise<T>): Promise<T> {
  if (db.file === IN_MEMORY) return work(db.sqlite);
  const snapshot = openDatabase(db.file, "read");
  try {
    snapshot.sqlite.exec("BEGIN");
    snapshot.sqlite.prepare("SELECT count(*) FROM sqlite_schema").get();
    const result = await work(snapshot.sqlite);
    snapshot.sqlite.exec("COMMIT");
    return result;
  } finally {
    snapshot.close();
  }
}

/** What each table holds; all of them when none is named. */
export function digestTables(db: Database, tables?: readonly string[]): Promise<TableDigests> {
  return withSnapshot(db, (sqlite) => digestConnection(sqlite, tables));
}
