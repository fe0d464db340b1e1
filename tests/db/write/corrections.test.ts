import { describe, expect, test } from "vitest";
import type { Database } from "@/db/client";
import { readReadingsInForce } from "@/db/read/readings";
import { readSessionReadings } from "@/db/read/session-readings";
import { readTrackKeys } from "@/db/read/tracks";
import { type CellChange, insertSessionCorrection } from "@/db/write/corrections";
import { insertSession } from "@/db/write/sessions";
import { countRows, entered, NOW, openAcademy, revisionOf, sessionOn, studentScope } from "../academy-fixture";

const base = { sessionId: "a", who: "Coach", why: "wrong still", now: NOW };
const values = (db: Database) => readReadingsInForce(db, studentScope()).map((reading) => reading.value);

async function withSession(): Promise<{ readonly db: Database; readonly first: CellChange }> {
  const db = await openAcademy();
  insertSession(db, studentScope(), sessionOn("2031-02-01"), { now: NOW, newId: () => "a", batchId: null });
  const reading = readSessionReadings(db, studentScope(), "a")[0];
  return { db, first: { readingId: reading?.id ?? 0, seen: 0, kind: "change", value: 70, typed: "70" } };
}

describe("correcting one session", () => {
  test("adds rows, leaves the readings as typed, and makes the student's analyses stale once", async () => {
    const { db, first } = await withSession();
    const before = revisionOf(db) ?? 0;
    const added = [{ number: 4, note: null, readings: [entered(86)] }];
    expect(insertSessionCorrection(db, studentScope(), { ...base, changes: [first], added })).toEqual({
      kind: "saved",
      corrected: 1,
      added: 1,
    });
    expect([values(db), revisionOf(db)]).toEqual([[70, 82, 84, 86], before + 1]);
    expect(db.sqlite.prepare("SELECT value, typed FROM reading ORDER BY id LIMIT 1").get()).toEqual({
      value: 80,
      typed: "80",
    });
  });

  test("is whole or not: one overtaken cell, or one reading added meanwhile, and nothing is written", async () => {
    const { db, first } = await withSession();
    const other = readSessionReadings(db, studentScope(), "a")[1];
    const second: CellChange = { readingId: other?.id ?? 0, seen: 9, kind: "change", value: 1, typed: "1" };
    const before = [countRows(db, "correction"), countRows(db, "reading"), revisionOf(db)];
    const changes = [first, second];
    expect(insertSessionCorrection(db, studentScope(), { ...base, changes, added: [] })).toEqual({
      kind: "conflict",
      readingIds: [second.readingId],
      added: [],
    });
    const added = [{ number: 2, note: null, readings: [entered(5)] }];
    expect(insertSessionCorrection(db, studentScope(), { ...base, changes: [first], added })).toMatchObject({
      kind: "conflict",
      added: [{ swing: 2, fundamentalId: "hinge", onFile: { value: 82 } }],
    });
    expect([countRows(db, "correction"), countRows(db, "reading"), revisionOf(db)]).toEqual(before);
    expect(insertSessionCorrection(db, studentScope("s2"), { ...base, changes, added: [] })).toEqual({
      kind: "unknown-session",
    });
  });

  test("a track whose every reading is taken out is none; brought back it is one again", async () => {
    const { db } = await withSession();
    const all = (kind: "change" | "void") =>
      readSessionReadings(db, studentScope(), "a").map(
        ({ id, correctionId }): CellChange => ({ readingId: id, seen: correctionId, kind, value: 5, typed: "5" }),
      );
    insertSessionCorrection(db, studentScope(), { ...base, changes: all("void"), added: [] });
    expect([values(db), readTrackKeys(db, studentScope())]).toEqual([[], []]);
    expect(readSessionReadings(db, studentScope(), "a").map((reading) => reading.state)).toEqual([
      "void",
      "void",
      "void",
    ]);
    insertSessionCorrection(db, studentScope(), { ...base, changes: all("change"), added: [] });
    expect([values(db), readTrackKeys(db, studentScope()).length]).toEqual([[5, 5, 5], 1]);
  });
});
