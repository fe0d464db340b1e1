import { cpSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import type { Database } from "@/db/client";

export function emptyFolder(): string {
  return mkdtempSync(path.join(os.tmpdir(), "proofband-"));
}

/** The project's migrations with one more behind them, in a folder of its own. */
export function plantMigration(statements: readonly string[]): string {
  const folder = path.join(emptyFolder(), "migrations");
  cpSync(path.resolve("db", "migrations"), folder, { recursive: true });
  const journalFile = path.join(folder, "meta", "_journal.json");
  const journal = JSON.parse(readFileSync(journalFile, "utf8"));
  const last = journal.entries[journal.entries.length - 1];
  journal.entries.push({ ...last, idx: last.idx + 1, when: last.when + 1000, tag: "9999_planted" });
  writeFileSync(journalFile, JSON.stringify(journal));
  writeFileSync(path.join(folder, "9999_planted.sql"), statements.join("\n--> statement-breakpoint\n"));
  return folder;
}

/** The first so many of the project's migrations, in a folder of their own. */
export function firstMigrations(count: number): string {
  const folder = path.join(emptyFolder(), "migrations");
  cpSync(path.resolve("db", "migrations"), folder, { recursive: true });
  const journalFile = path.join(folder, "meta", "_journal.json");
  const journal = JSON.parse(readFileSync(journalFile, "utf8"));
  writeFileSync(journalFile, JSON.stringify({ ...journal, entries: journal.entries.slice(0, count) }));
  return folder;
}

/** The statements with which the generator changes a column: a new table, the rows over, the old one dropped. */
export function rebuildStatements(db: Database, table: string): string[] {
  const definitions = db.sqlite
    .prepare<[string], { type: string; sql: string }>(
      "SELECT type, sql FROM sqlite_schema WHERE tbl_name = ? AND sql IS NOT NULL ORDER BY type DESC",
    )
    .all(table);
  const create = definitions.find((definition) => definition.type === "table")?.sql ?? "";
  const indexes = definitions.filter((definition) => definition.type === "index").map((definition) => definition.sql);
  return [
    "PRAGMA foreign_keys=OFF;",
    // A table that was renamed stands there in double quotes.
    create.replace(new RegExp(`["\`]${table}["\`]`), `\`__new_${table}\``),
    `INSERT INTO \`__new_${table}\` SELECT * FROM \`${table}\`;`,
    `DROP TABLE \`${table}\`;`,
    `ALTER TABLE \`__new_${table}\` RENAME TO \`${table}\`;`,
    "PRAGMA foreign_keys=ON;",
    ...indexes,
  ];
}
