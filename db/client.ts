import { chmodSync, closeSync, existsSync, mkdirSync, openSync } from "node:fs";
import path from "node:path";
import Sqlite from "better-sqlite3";
import { type BetterSQLite3Database, drizzle } from "drizzle-orm/better-sqlite3";
import * as coaching from "./schema";
import * as entry from "./schema-entry";
import * as people from "./schema-people";
import * as plans from "./schema-plans";
import * as privacy from "./schema-privacy";
import * as rereads from "./schema-rereads";
import * as work from "./schema-work";

const tables = { ...coaching, ...work, ...rereads, ...entry, ...people, ...privacy, ...plans };

/** One open database: typed by table, raw for what must be fast, and closable. */
export interface Database {
  /** `:memory:` or the path of the file. */
  readonly file: string;
  readonly orm: BetterSQLite3Database<typeof tables>;
  readonly sqlite: Sqlite.Database;
  close(): void;
}

/** `write` for the one process that owns the file; `read` for workers and copies: never creates, never changes. */
export type Access = "write" | "read";

export const IN_MEMORY = ":memory:";

// The journal and its index take the mode of the file, so the file must have it before SQLite writes.
function createPrivately(file: string): void {
  mkdirSync(path.dirname(file), { recursive: true, mode: 0o700 });
  if (!existsSync(file)) closeSync(openSync(file, "a", 0o600));
  chmodSync(file, 0o600);
}

export function openDatabase(file: string, access: Access = "write"): Database {
  if (access === "write" && file !== IN_MEMORY) createPrivately(file);
  const sqlite = new Sqlite(file, access === "read" ? { readonly: true, fileMustExist: true } : {});
  try {
    sqlite.pragma("busy_timeout = 5000");
    if (access === "write") {
      sqlite.pragma("journal_mode = WAL");
      sqlite.pragma("synchronous = FULL");
      sqlite.pragma("secure_delete = ON");
    }
    sqlite.pragma("cache_size = -65536");
    sqlite.pragma("temp_store = MEMORY");
    sqlite.pragma("foreign_keys = ON");
  } catch (error) {
    sqlite.close();
    throw error;
  }
  return {
    file,
    sqlite,
    orm: drizzle(sqlite, { schema: tables }),
    close() {
      if (!sqlite.open) return;
      if (access === "write") sqlite.pragma("wal_checkpoint(TRUNCATE)");
      sqlite.close();
    },
  };
}

/**
 * Runs the work whole or not at all; inside another one it is a part of it. The work is synchronous: after an await
 * it would be outside.
 */
export function inTransaction<T>(db: Database, work: () => T): T {
  return db.sqlite.transaction(work).immediate();
}

/** Runs work that is to fail as busy at once where another connection writes, in place of waiting for it. */
export function withoutWaiting<T>(db: Database, work: () => T): T {
  const before = Number(db.sqlite.pragma("busy_timeout", { simple: true }));
  db.sqlite.pragma("busy_timeout = 0");
  try {
    return work();
  } finally {
    db.sqlite.pragma(`busy_timeout = ${before}`);
  }
}
