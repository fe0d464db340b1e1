import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Database } from "@/db/client";
import { readAcademyReadings, readCorrections, readReadingsInForce } from "@/db/read/readings";
import { insertCorrection, insertReadings } from "@/db/write/readings";
import { insertSession } from "@/db/write/sessions";
import { academyScope, entered, NOW, openAcademy, sessionOn, studentScope, swings } from "../academy-fixture";

const origin = { now: NOW, batchId: null };

function enter(db: Database, day: string, change: Parameters<typeof sessionOn>[1] = {}, id = day): void {
  const result = insertSession(db, studentScope(), sessionOn(day, change), {
    now: NOW,
    newId: () => id,
    batchId: null,
  });
  expect(result.kind).toBe("inserted");
}

function correct(db: Database, readingId: number, value: number | null, now = NOW) {
  const change = { readingId, value, typed: `${value}`, who: "Coach", why: "wrong still", now };
  return insertCorrection(db, studentScope(), change);
}

describe("readings in force", () => {
  test("come by day, sequence, swing and fundamental, whatever the order of entry", async () => {
    const db = await openAcademy();
    const two = [{ number: 2, note: null, readings: [entered(3), entered(4, "foot-line")] }, ...swings(1)];
    enter(db, "2031-02-02");
    enter(db, "2031-02-01", { sequence: 2, swings: two }, "late");
    enter(db, "2031-02-01", { swings: swings(9) }, "early");
    const order = readReadingsInForce(db, studentScope()).map(
      (reading) => `${reading.sessionId} ${reading.swing} ${reading.fundamentalId} ${reading.value}`,
    );
    expect(order).toEqual([
      "early 1 hinge 9",
      "late 1 hinge 1",
      "late 2 foot-line 4",
      "late 2 hinge 3",
      "2031-02-02 1 hinge 80",
      "2031-02-02 2 hinge 82",
      "2031-02-02 3 hinge 84",
    ]);
  });

  test("have the value of the latest correction, and what was typed for it; a re-read and a second reader don't count", async () => {
    const db = await openAcademy();
    enter(db, "2031-02-01", { swings: swings(80) });
    const id = readReadingsInForce(db, studentScope())[0]?.id ?? 0;
    const sessionId = "2031-02-01";
    insertReadings(db, studentScope(), { sessionId, reader: null, reading: "again", swings: swings(70) }, origin);
    insertReadings(db, studentScope(), { sessionId, reader: "Other", reading: "first", swings: swings(60) }, origin);
    expect(readReadingsInForce(db, studentScope()).map((reading) => reading.value)).toEqual([80]);
    correct(db, id, 81);
    correct(db, id, null);
    expect(readReadingsInForce(db, studentScope())).toMatchObject([{ id, value: null, typed: "null", swing: 1 }]);
    correct(db, id, 82);
    expect(readReadingsInForce(db, studentScope())).toMatchObject([{ id, value: 82, typed: "82", correctedAt: NOW }]);
    expect(db.sqlite.prepare("SELECT value, typed FROM reading WHERE id = ?").get(id)).toEqual({
      value: 80,
      typed: "80",
    });
  });

  test("as known on a day leave out what was entered or corrected later", async () => {
    const db = await openAcademy();
    enter(db, "2031-02-01", { swings: swings(80) });
    const id = readReadingsInForce(db, studentScope())[0]?.id ?? 0;
    correct(db, id, 81, "2031-03-02T00:00:00.000Z");
    correct(db, id, 82, "2031-03-03T00:00:00.000Z");
    const asKnown = (knownAt: string) =>
      readReadingsInForce(db, studentScope(), { knownAt }).map((reading) => reading.value);
    expect(asKnown("2031-02-28T00:00:00.000Z")).toEqual([]);
    expect(asKnown("2031-03-01T23:00:00.000Z")).toEqual([80]);
    expect(asKnown("2031-03-02T12:00:00.000Z")).toEqual([81]);
    expect(asKnown("2031-03-04T00:00:00.000Z")).toEqual([82]);
  });

  test("are those of the fundamental and club group asked for, and of no other student", async () => {
    const db = await openAcademy();
    enter(db, "2031-02-01", { swings: [{ number: 1, note: null, readings: [entered(1), entered(2, "foot-line")] }] });
    enter(db, "2031-02-02", { clubGroup: "driver", swings: swings(3) });
    const values = (filter: Parameters<typeof readReadingsInForce>[2]) =>
      readReadingsInForce(db, studentScope(), filter).map((reading) => reading.value);
    expect(values({ fundamentalId: "hinge" })).toEqual([1, 3]);
    expect(values({ clubGroup: "iron" })).toEqual([2, 1]);
    expect(values({ fundamentalId: "hinge", clubGroup: "driver" })).toEqual([3]);
    expect(readReadingsInForce(db, studentScope("s2"))).toEqual([]);
    expect([...readAcademyReadings(db, academyScope())].map((one) => [one.studentId, one.readings.length])).toEqual([
      ["s1", 3],
    ]);
    expect([...readAcademyReadings(db, academyScope("a2"))]).toEqual([]);
  });

  test("are found through the track's index, not by reading the table", async () => {
    const db = await openAcademy();
    const plans: string[] = [];
    const spied = {
      ...db,
      sqlite: {
        prepare: (sql: string) => {
          plans.push(sql);
          return db.sqlite.prepare(sql);
        },
      },
    } as unknown as Database;
    readReadingsInForce(spied, studentScope(), { fundamentalId: "hinge", clubGroup: "iron" });
    const plan = db.sqlite
      .prepare<[object], { detail: string }>(`EXPLAIN QUERY PLAN ${plans[0]}`)
      .all({ studentId: "s1", fundamentalId: "hinge", clubGroup: "iron" })
      .map((row) => row.detail);
    expect(plan.some((line) => /^SCAN/.test(line))).toBe(false);
    expect(plan.some((line) => /SEARCH reading USING .*INDEX reading_track/.test(line))).toBe(true);
  });

  test("equal a brute search through every row, for any mix of readers, re-reads, corrections and readings taken out", async () => {
    const row = fc.record({
      swing: fc.integer({ min: 1, max: 2 }),
      fundamentalId: fc.constantFrom("hinge" as const, "foot-line" as const),
      reader: fc.constantFrom("Coach", "Other"),
      reread: fc.integer({ min: 0, max: 2 }),
      value: fc.option(fc.integer({ min: -9, max: 9 })),
      hour: fc.integer({ min: 0, max: 9 }),
      corrections: fc.array(
        fc.record({
          kind: fc.constantFrom("change", "change", "void"),
          value: fc.option(fc.integer()),
          hour: fc.integer({ min: 0, max: 9 }),
        }),
        { maxLength: 3 },
      ),
    });
    const db = await openAcademy();
    enter(db, "2031-02-01", { swings: [1, 2].map((number) => ({ number, note: null, readings: [] })) });
    const swingIds = db.sqlite.prepare<[], number>("SELECT id FROM swing ORDER BY number").pluck().all();
    const addReading = db.sqlite.prepare(
      "INSERT INTO reading VALUES (NULL, 's1', ?, '2031-02-01', ?, ?, ?, ?, '', 'deg', 'neutral', ?, NULL)",
    );
    const addCorrection = db.sqlite.prepare(
      "INSERT INTO correction (reading_id, kind, value, typed, who, why, corrected_at) VALUES (?, ?, ?, '', 'w', 'y', ?)",
    );
    const at = (hour: number) => `2031-02-01T0${hour}:00:00.000Z`;
    fc.assert(
      fc.property(
        fc.uniqueArray(row, { selector: (r) => `${r.swing}${r.fundamentalId}${r.reader}${r.reread}` }),
        fc.option(fc.integer({ min: 0, max: 9 })),
        (rows, knownHour) => {
          db.sqlite.exec("DELETE FROM reading");
          for (const r of rows) {
            const made = addReading.run(
              r.fundamentalId,
              swingIds[r.swing - 1],
              r.reader,
              r.reread,
              r.value,
              at(r.hour),
            );
            for (const c of r.corrections) addCorrection.run(made.lastInsertRowid, c.kind, c.value, at(c.hour));
          }
          const limit = knownHour ?? 10;
          const expected = rows
            .filter((r) => r.reader === "Coach" && r.reread === 0 && r.hour <= limit)
            .flatMap((r) => {
              const known = r.corrections.filter((c) => c.hour <= limit);
              const last = known[known.length - 1];
              if (last?.kind === "void") return [];
              return `${r.swing} ${r.fundamentalId} ${last ? last.value : r.value}`;
            })
            .sort();
          const knownAt = knownHour === null ? undefined : at(knownHour);
          const found = readReadingsInForce(db, studentScope(), { knownAt });
          expect(found.map((r) => `${r.swing} ${r.fundamentalId} ${r.value}`)).toEqual(expected);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe("corrections", () => {
  test("are listed with what stood before each; a foreign reading can't be corrected", async () => {
    const db = await openAcademy();
    enter(db, "2031-02-01", { swings: swings(80) });
    const id = readReadingsInForce(db, studentScope())[0]?.id ?? 0;
    correct(db, id, 81);
    correct(db, id, null);
    const change = { readingId: id, value: 1, typed: "1", who: "x", why: "y", now: NOW };
    expect(insertCorrection(db, studentScope("s2"), change)).toEqual({ kind: "unknown-reading", readingId: id });
    expect(readCorrections(db, studentScope()).map((one) => [one.before.value, one.after.value])).toEqual([
      [80, 81],
      [81, null],
    ]);
  });
});
