import { existsSync, readdirSync, rmSync } from "node:fs";
import path from "node:path";
import { drizzle } from "drizzle-orm/better-sqlite3";
import { migrate } from "drizzle-orm/better-sqlite3/migrator";
import { describe, expect, test } from "vitest";
import { checkBackup, digestTables } from "@/db/backup";
import { type Database, IN_MEMORY, openDatabase } from "@/db/client";
import { readTableNames } from "@/db/digest";
import { migrateDb } from "@/db/migrate";
import { countRows } from "./academy-fixture";
import { openFilledAcademy } from "./filled-academy";
import { emptyFolder, firstMigrations, plantMigration, rebuildStatements } from "./planted-migrations";

const JOURNAL = "__drizzle_migrations";
const MIGRATIONS = readdirSync(path.resolve("db", "migrations")).filter((name) => name.endsWith(".sql")).length;

function dataTables(db: Database): string[] {
  return readTableNames(db.sqlite).filter((table) => table !== JOURNAL);
}

function copiesBeside(file: string): string[] {
  return readdirSync(path.dirname(file)).filter((name) => name.includes(".before-"));
}

describe("a migration of a filled database", () => {
  test("that rebuilds each table in turn keeps every row of every table", async () => {
    const db = await openFilledAcademy();
    const tables = dataTables(db);
    for (const table of tables) expect(`${table} ${countRows(db, table) > 0}`).toBe(`${table} true`);
    const before = await digestTables(db, tables);
    const folder = plantMigration(tables.flatMap((table) => rebuildStatements(db, table)));
    expect(await migrateDb(db, folder)).toEqual({ applied: 1, copy: null });
    expect(await digestTables(db, dataTables(db))).toEqual(before);
    expect(db.sqlite.pragma("foreign_keys", { simple: true })).toBe(1);
    rmSync(folder, { recursive: true });
  });

  test("that drops a parent keeps its children: 3 before, 3 after; without the guard 0", async () => {
    const statements = (db: Database) => rebuildStatements(db, "session");
    const guarded = await openFilledAcademy(undefined, 3, 1);
    const bare = await openFilledAcademy(undefined, 3, 1);
    expect([countRows(guarded, "swing"), countRows(bare, "swing")]).toEqual([3, 3]);
    const folder = plantMigration(statements(guarded));
    await migrateDb(guarded, folder);
    migrate(drizzle(bare.sqlite), { migrationsFolder: folder });
    expect([countRows(guarded, "swing"), countRows(bare, "swing")]).toEqual([3, 0]);
    rmSync(folder, { recursive: true });
  });

  test("that would break foreign keys is refused by the tables' names and leaves everything as it was", async () => {
    const file = path.join(emptyFolder(), "d.db");
    const db = await openFilledAcademy(file);
    const before = await digestTables(db);
    const folder = plantMigration(["CREATE TABLE `later` (`id` text);", "DELETE FROM `swing` WHERE `number` = 1;"]);
    await expect(migrateDb(db, folder)).rejects.toThrow("reading (9 rows without their swing)");
    expect(await digestTables(db)).toEqual(before);
    expect(db.sqlite.pragma("foreign_keys", { simple: true })).toBe(1);
    expect(copiesBeside(file)).toHaveLength(2);
    db.close();
  });

  test("that fails midway leaves everything as it was", async () => {
    const db = await openFilledAcademy();
    const before = await digestTables(db);
    const folder = plantMigration(["DELETE FROM `seen`;", "SELECT * FROM `nowhere`;"]);
    await expect(migrateDb(db, folder)).rejects.toThrow("nowhere");
    expect(await digestTables(db)).toEqual(before);
  });

  test("leaves a sound copy of the rows before it, beside the file", async () => {
    const file = path.join(emptyFolder(), "d.db");
    const db = await openFilledAcademy(file);
    const before = await digestTables(db);
    const { copy } = await migrateDb(db, plantMigration(["DELETE FROM `seen`;"]));
    const check = await checkBackup(copy ?? "");
    expect(check).toMatchObject({ kind: "sound", against: "manifest", tables: before });
    expect(countRows(db, "seen")).toBe(0);
    db.close();
  });
});

describe("the club groups' migration", () => {
  test("keeps every session in the group that was said, and every look's noise model in that group", async () => {
    const db = openDatabase(IN_MEMORY);
    await migrateDb(db, firstMigrations(1));
    for (const statement of [
      `INSERT INTO academy VALUES ('a1', 'A', 'O', 'UTC', 'en', 'own', NULL, '2031-01-01', '2031-01-01')`,
      `INSERT INTO student VALUES ('s1', 'a1', 'Ulla', NULL, 'left', 'UTC', '', 3, '2031-01-01')`,
      ...["iron", "driver"].map(
        (
          group,
          at,
        ) => `INSERT INTO session (id, student_id, day, sequence, club_group, club, reader, circumstance, marks,
           created_at) VALUES ('x${at}', 's1', '2031-02-01', 1, '${group}', NULL, 'O', 'unaided', '', '2031-02-01')`,
      ),
      "INSERT INTO look_noise VALUES ('s1', 'x1', 'hinge', 'hinge/driver#1')",
    ])
      db.sqlite.exec(statement);
    await migrateDb(db);
    expect(db.sqlite.prepare("SELECT club_group, said_club_group FROM session ORDER BY id").raw().all()).toEqual([
      ["iron", "iron"],
      ["driver", "driver"],
    ]);
    expect(db.sqlite.prepare("SELECT * FROM look_noise").raw().all()).toEqual([
      ["s1", "x1", "hinge", "driver", "hinge/driver#1"],
    ]);
  });
});

describe("a database without rows or without anything to migrate", () => {
  test("gets no copy, and a second run does nothing", async () => {
    const file = path.join(emptyFolder(), "d.db");
    const db = openDatabase(file);
    expect(await migrateDb(db)).toEqual({ applied: MIGRATIONS, copy: null });
    expect(await migrateDb(db)).toEqual({ applied: 0, copy: null });
    expect(copiesBeside(file)).toEqual([]);
    db.close();
    const memory = openDatabase(IN_MEMORY);
    expect(await migrateDb(memory)).toEqual({ applied: MIGRATIONS, copy: null });
    expect(existsSync(IN_MEMORY)).toBe(false);
  });
});
