import path from "node:path";
import { type MigrationMeta, readMigrationFiles } from "drizzle-orm/migrator";
import { backupTo } from "./backup";
import { type Database, IN_MEMORY } from "./client";
import { readTableNames } from "./digest";

const JOURNAL = "__drizzle_migrations";
const CREATE_JOURNAL = `CREATE TABLE IF NOT EXISTS ${JOURNAL} (id SERIAL PRIMARY KEY, hash text NOT NULL, created_at numeric)`;

/** What a migration did, and where the copy of the data before it lies. */
export interface Migrated {
  readonly applied: number;
  readonly copy: string | null;
}

function pendingMigrations(db: Database, folder: string): MigrationMeta[] {
  const journalExists = readTableNames(db.sqlite).includes(JOURNAL);
  const last = journalExists
    ? db.sqlite.prepare<[], number | null>(`SELECT max(created_at) FROM ${JOURNAL}`).pluck().get()
    : undefined;
  return readMigrationFiles({ migrationsFolder: folder }).filter(
    (migration) => last === undefined || last === null || last < migration.folderMillis,
  );
}

function isFilled(db: Database): boolean {
  return readTableNames(db.sqlite)
    .filter((table) => table !== JOURNAL)
    .some((table) => db.sqlite.prepare(`SELECT 1 FROM "${table}" LIMIT 1`).get() !== undefined);
}

function requireKeysToHold(db: Database): void {
  const broken = db.sqlite
    .prepare<[], { table: string; parent: string; rows: number }>(
      `SELECT "table", parent, count(*) AS rows FROM pragma_foreign_key_check GROUP BY "table", parent`,
    )
    .all();
  if (broken.length === 0) return;
  const list = broken.map((row) => `${row.table} (${row.rows} rows without their ${row.parent})`).join(", ");
  throw new Error(`foreign keys broken after migration: ${list}`);
}

function applyMigrations(db: Database, folder: string): number {
  db.sqlite.exec(CREATE_JOURNAL);
  const record = db.sqlite.prepare(`INSERT INTO ${JOURNAL} (hash, created_at) VALUES (?, ?)`);
  // Asked again inside the transaction: another process may have migrated meanwhile.
  const pending = pendingMigrations(db, folder);
  for (const migration of pending) {
    for (const statement of migration.sql) db.sqlite.exec(statement);
    record.run(migration.hash, migration.folderMillis);
  }
  requireKeysToHold(db);
  return pending.length;
}

/**
 * Brings the tables up to date, whole or not at all. Foreign keys are off meanwhile: a rebuilt table is dropped, and
 * dropping would erase its children. Inside the transaction the pragma is ignored, so it is set before.
 *
 * @throws Error naming the tables whose foreign keys would be broken; the data stay as they were
 */
export async function migrateDb(db: Database, migrations = path.resolve("db", "migrations")): Promise<Migrated> {
  const pending = pendingMigrations(db, migrations);
  if (pending.length === 0) return { applied: 0, copy: null };
  const copy =
    db.file !== IN_MEMORY && isFilled(db) ? `${db.file}.before-${pending[pending.length - 1]?.folderMillis}` : null;
  if (copy !== null) await backupTo(db, copy);
  db.sqlite.pragma("foreign_keys = OFF");
  try {
    const applied = db.sqlite.transaction(() => applyMigrations(db, migrations)).immediate();
    return { applied, copy };
  } finally {
    db.sqlite.pragma("foreign_keys = ON");
  }
}
