import { existsSync, mkdtempSync, rmSync, statSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import { IN_MEMORY, inTransaction, openDatabase } from "@/db/client";
import { migrateDb } from "@/db/migrate";
import { insertAcademy } from "@/db/write/academies";
import { countRows, openAcademy } from "./academy-fixture";

const folders: string[] = [];

function emptyFolder(): string {
  const folder = mkdtempSync(path.join(os.tmpdir(), "proofband-"));
  folders.push(folder);
  return folder;
}

afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

describe("an open database", () => {
  test("is in WAL, synced fully, with keys on and erased bytes overwritten", () => {
    const db = openDatabase(path.join(emptyFolder(), "d.db"));
    const settings = ["journal_mode", "synchronous", "busy_timeout", "cache_size", "temp_store", "foreign_keys"];
    const found = settings.map((name) => db.sqlite.pragma(name, { simple: true }));
    expect(found).toEqual(["wal", 2, 5000, -65536, 2, 1]);
    expect(db.sqlite.pragma("secure_delete", { simple: true })).toBe(1);
    db.close();
  });

  test("is the owner's alone: files 0600 in a folder 0700", async () => {
    const folder = path.join(emptyFolder(), "data");
    const file = path.join(folder, "d.db");
    const db = await openAcademy(file);
    expect(statSync(folder).mode & 0o777).toBe(0o700);
    for (const name of [file, `${file}-wal`, `${file}-shm`]) expect(statSync(name).mode & 0o777).toBe(0o600);
    db.close();
  });

  test("closed, leaves one file with everything in it, and may be closed again", async () => {
    const file = path.join(emptyFolder(), "d.db");
    const db = await openAcademy(file);
    db.close();
    db.close();
    expect(existsSync(`${file}-wal`)).toBe(false);
    const reader = openDatabase(file, "read");
    expect(countRows(reader, "student")).toBe(3);
    reader.close();
  });

  test("opened for reading refuses to write, and doesn't make a file that isn't there", async () => {
    const file = path.join(emptyFolder(), "d.db");
    const db = await openAcademy(file);
    const reader = openDatabase(file, "read");
    expect(() => reader.sqlite.exec("DELETE FROM student")).toThrow(/readonly/);
    reader.close();
    db.close();
    expect(() => openDatabase(`${file}.none`, "read")).toThrow();
    expect(existsSync(`${file}.none`)).toBe(false);
  });

  test("refuses a file that is no database", async () => {
    const db = openDatabase(IN_MEMORY);
    await migrateDb(db);
    expect(() => openDatabase(path.resolve("package.json"), "read").sqlite.prepare("SELECT 1 FROM student")).toThrow();
    db.close();
  });
});

describe("a transaction", () => {
  test("that throws leaves nothing, inside another one too", async () => {
    const db = await openAcademy();
    const row = { name: "n", ownerName: "o", zone: "z", locale: "en", kind: "own", fixedToday: null } as const;
    const add = (id: string) => insertAcademy(db, { ...row, id, seasonStart: "2031-01-01", createdAt: "t" });
    expect(() =>
      inTransaction(db, () => {
        add("b1");
        throw new Error("stop");
      }),
    ).toThrow("stop");
    inTransaction(db, () => {
      add("b2");
      expect(() =>
        inTransaction(db, () => {
          add("b3");
          throw new Error("stop");
        }),
      ).toThrow("stop");
    });
    const ids = db.sqlite.prepare("SELECT id FROM academy ORDER BY id").pluck().all();
    expect(ids).toEqual(["a1", "a2", "b2"]);
  });

  test("refuses work that goes on after an await", async () => {
    const db = await openAcademy();
    expect(() => inTransaction(db, async () => 1)).toThrow(/promise/);
  });
});
