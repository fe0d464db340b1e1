import { copyFileSync, existsSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { backupTo, checkBackup, digestTables, manifestOf } from "@/db/backup";
import { openDatabase } from "@/db/client";
import { readAcademy, readAcademyIds } from "@/db/read/academies";
import { readCurrentSummaries } from "@/db/read/current-analyses";
import { readLookNoise } from "@/db/read/looks";
import { readReadingsInForce } from "@/db/read/readings";
import { readSessions } from "@/db/read/sessions";
import { readTrackKeys } from "@/db/read/tracks";
import { insertSession } from "@/db/write/sessions";
import { academyScope, countRows, NOW, sessionOn, studentScope } from "./academy-fixture";
import { openFilledAcademy } from "./filled-academy";
import { emptyFolder } from "./planted-migrations";

async function filledWithCopy() {
  const folder = emptyFolder();
  const db = await openFilledAcademy(path.join(folder, "d.db"));
  const copy = path.join(folder, "copies", "night.db");
  const digests = await backupTo(db, copy);
  return { db, copy, digests, folder };
}

describe("a digest of a table", () => {
  test("changes with any changed value, one more row or one less, and only that table's", async () => {
    const db = await openFilledAcademy();
    const before = await digestTables(db);
    expect(before.swing?.rows).toBe(12);
    const changes: [string, string][] = [
      ["reading", "UPDATE reading SET value = value + 1e-9 WHERE id = 1"],
      ["swing", "DELETE FROM swing WHERE number = 4"],
      ["session", "UPDATE session SET note = '' WHERE note IS NULL"],
    ];
    for (const [table, sql] of changes) {
      db.sqlite.exec("BEGIN");
      db.sqlite.exec(sql);
      const after = await digestTables(db, [table]);
      db.sqlite.exec("ROLLBACK");
      expect(after[table]).not.toEqual(before[table]);
    }
    expect(await digestTables(db)).toEqual(before);
  });

  test("doesn't depend on the order in which rows were written", async () => {
    const db = await openFilledAcademy();
    const before = await digestTables(db, ["height", "stated_capture_sd"]);
    db.sqlite.exec(`CREATE TEMP TABLE kept AS SELECT * FROM stated_capture_sd ORDER BY session_id DESC;
      DELETE FROM stated_capture_sd; INSERT INTO stated_capture_sd SELECT * FROM kept;`);
    expect(await digestTables(db, ["height", "stated_capture_sd"])).toEqual(before);
  });

  test("of more rows than are read at once sees a change in the first and in the last", async () => {
    const db = await openFilledAcademy(undefined, 100, 50);
    expect(countRows(db, "reading")).toBe(15_000);
    const before = await digestTables(db, ["reading"]);
    for (const id of [1, 15_000]) {
      db.sqlite.prepare("UPDATE reading SET typed = typed || ' ' WHERE id = ?").run(id);
      const after = await digestTables(db, ["reading"]);
      expect(after).not.toEqual(before);
      db.sqlite.prepare("UPDATE reading SET typed = trim(typed) WHERE id = ?").run(id);
    }
    expect(await digestTables(db, ["reading"])).toEqual(before);
  });

  test("of a table that isn't there is a mistake", async () => {
    const db = await openFilledAcademy();
    await expect(digestTables(db, ["nowhere"])).rejects.toThrow("no such table: nowhere");
  });

  test("of every table is the same after each kind of reading: looking changes nothing", async () => {
    const db = await openFilledAcademy();
    const before = await digestTables(db);
    readAcademy(db, academyScope());
    readAcademyIds(db);
    readSessions(db, studentScope());
    readReadingsInForce(db, studentScope(), { knownAt: NOW });
    readTrackKeys(db, academyScope());
    readLookNoise(db, studentScope());
    readCurrentSummaries(db, academyScope(), "p1");
    expect(await digestTables(db)).toEqual(before);
  });
});

describe("a copy", () => {
  test("holds every row, is one file of the owner's alone, and says so when it is checked", async () => {
    const { db, copy, digests } = await filledWithCopy();
    expect(await checkBackup(copy)).toEqual({ kind: "sound", tables: digests, against: "manifest" });
    const opened = openDatabase(copy, "read");
    expect(await digestTables(opened)).toEqual(await digestTables(db));
    opened.close();
    expect([statSync(copy).mode & 0o777, statSync(manifestOf(copy)).mode & 0o777]).toEqual([0o600, 0o600]);
    expect(statSync(path.dirname(copy)).mode & 0o777).toBe(0o700);
    for (const end of ["-wal", "-shm", "-journal", ".part"]) expect(existsSync(`${copy}${end}`)).toBe(false);
    db.close();
  });

  test("made while others write holds the rows of one moment", async () => {
    const { db, folder } = await filledWithCopy();
    const making = backupTo(db, path.join(folder, "busy.db"));
    for (let day = 10; day < 30; day += 1) {
      insertSession(db, studentScope(), sessionOn(`2031-05-${day}`), {
        now: NOW,
        newId: () => `b${day}`,
        batchId: null,
      });
      await new Promise((resolve) => setImmediate(resolve));
    }
    const digests = await making;
    expect(await checkBackup(path.join(folder, "busy.db"))).toMatchObject({ kind: "sound", tables: digests });
    expect(countRows(db, "session")).toBe(23);
    db.close();
  });

  test("takes the place of an earlier one under its name only when it is whole", async () => {
    const { db, copy } = await filledWithCopy();
    const earlier = await checkBackup(copy);
    db.sqlite.pragma("foreign_keys = OFF");
    db.sqlite.exec("DELETE FROM swing WHERE number = 1");
    await expect(backupTo(db, copy)).rejects.toThrow(/not sound.*foreign-key.*reading/);
    expect(await checkBackup(copy)).toEqual(earlier);
    db.close();
  });

  test("with one bit changed anywhere is refused: 60 bits across the file", async () => {
    const { db, copy } = await filledWithCopy();
    const bytes = readFileSync(copy);
    for (let attempt = 0; attempt < 60; attempt += 1) {
      const damaged = Buffer.from(bytes);
      const place = Math.floor((attempt / 60) * bytes.length);
      damaged[place] = (damaged[place] ?? 0) ^ (1 << (attempt % 8));
      writeFileSync(copy, damaged);
      const check = await checkBackup(copy);
      expect(`bit ${attempt % 8} of byte ${place}: ${check.kind}`).toBe(`bit ${attempt % 8} of byte ${place}: unsound`);
    }
    db.close();
  });

  test("with a changed value names the table; without its digests only SQLite's own checks can speak", async () => {
    const { db, copy } = await filledWithCopy();
    const opened = openDatabase(copy);
    opened.sqlite.exec("UPDATE reading SET value = value + 1 WHERE id = 2; DROP TABLE seen");
    opened.sqlite.pragma("journal_mode = DELETE");
    opened.close();
    const problems = [
      { kind: "file-changed" },
      { kind: "differs", table: "reading" },
      { kind: "missing", table: "seen" },
      { kind: "differs", table: "sqlite_schema" },
    ];
    expect(await checkBackup(copy)).toEqual({ kind: "unsound", problems });
    rmSync(manifestOf(copy));
    expect(await checkBackup(copy)).toMatchObject({ kind: "sound", against: "itself" });
    db.close();
  });

  test("cut short, missing, or another kind of file is refused without being touched", async () => {
    const { db, copy, folder } = await filledWithCopy();
    writeFileSync(`${copy}.cut`, readFileSync(copy).subarray(0, 9000));
    copyFileSync("package.json", `${copy}.json`);
    for (const file of [`${copy}.cut`, `${copy}.json`, `${copy}.none`]) {
      const size = existsSync(file) ? statSync(file).size : 0;
      expect((await checkBackup(file)).kind).toBe("unsound");
      expect(existsSync(file) ? statSync(file).size : 0).toBe(size);
    }
    db.close();
    rmSync(folder, { recursive: true });
  });
});
