import path from "node:path";
import { readMigrationFiles } from "drizzle-orm/migrator";
import type { Database } from "../client";

/** How many migrations a database has had, and how many this version of the program has. */
export function readMigrationCounts(
  db: Database,
  migrations = path.resolve("db", "migrations"),
): { readonly applied: number; readonly known: number } {
  const applied = db.sqlite.prepare<[], number>("SELECT count(*) FROM __drizzle_migrations").pluck().get() ?? 0;
  return { applied, known: readMigrationFiles({ migrationsFolder: migrations }).length };
}
