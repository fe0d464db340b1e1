import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect, test } from "vitest";
import { openDatabase } from "@/db/client";
import { writeQuietly } from "@/db/quiet-writes";
import { readFileStamp } from "@/db/read/file-stamp";

test("a stamp holds while nobody writes, and changes with a write of one's own or of another connection", () => {
  const folder = mkdtempSync(path.join(tmpdir(), "proofband-"));
  const [one, other] = [openDatabase(path.join(folder, "x.db")), openDatabase(path.join(folder, "x.db"))];
  try {
    one.sqlite.exec("CREATE TABLE made (value)");
    other.sqlite.prepare("SELECT count(*) FROM made").get();
    const stamps = [readFileStamp(one)];
    expect(readFileStamp(one)).toBe(stamps[0]);
    one.sqlite.prepare("SELECT * FROM made").all();
    expect(readFileStamp(one)).toBe(stamps[0]);
    one.sqlite.exec("INSERT INTO made VALUES (1)");
    stamps.push(readFileStamp(one));
    other.sqlite.exec("UPDATE made SET value = 2");
    stamps.push(readFileStamp(one));
    other.sqlite.exec("DELETE FROM made");
    stamps.push(readFileStamp(one));
    expect(new Set(stamps).size).toBe(4);
  } finally {
    one.close();
    other.close();
    rmSync(folder, { recursive: true, force: true });
  }
});

test("what is written quietly leaves the stamp, also where it fails half-way; what is written beside it doesn't", () => {
  const db = openDatabase(":memory:");
  try {
    db.sqlite.exec("CREATE TABLE made (value)");
    const write = db.sqlite.prepare("INSERT INTO made VALUES (1), (2), (3)");
    const stamp = readFileStamp(db);
    expect(writeQuietly(db, () => write.run().changes)).toBe(3);
    expect(readFileStamp(db)).toBe(stamp);
    expect(() =>
      writeQuietly(db, () => {
        write.run();
        throw new Error("half-way");
      }),
    ).toThrow("half-way");
    expect(readFileStamp(db)).toBe(stamp);
    write.run();
    expect(readFileStamp(db)).not.toBe(stamp);
  } finally {
    db.close();
  }
});
