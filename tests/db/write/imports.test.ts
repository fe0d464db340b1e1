import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { digestTables } from "@/db/backup";
import { readImportBatches } from "@/db/read/import-batches";
import { readReadingsInForce } from "@/db/read/readings";
import { readCaptures, readSessions } from "@/db/read/sessions";
import { readConsents, readStudents } from "@/db/read/students";
import { insertImport } from "@/db/write/imports";
import { insertCorrection } from "@/db/write/readings";
import type { EnteredSession } from "@/lib/domain/session-entry";
import { manyCases } from "../../many-cases";
import {
  academyScope,
  countRows,
  entered,
  NOW,
  openAcademy,
  revisionOf,
  sessionOn,
  studentScope,
  swings,
} from "../academy-fixture";
import { importDoor, planOf, season } from "../filled-academy";

const newcomer = { alias: "Nino", hand: "right", birthYear: 2017, consentGivenBy: "Mother" } as const;
const scope = academyScope();

describe("an import", () => {
  test("adds students with their consent, sessions and readings, counts them, and keeps the batch", async () => {
    const db = await openAcademy();
    const sessions = [
      ["Nino", sessionOn("2031-02-01")],
      ["Ulla", sessionOn("2031-02-01", { swings: swings(1, null) })],
    ] as const;
    const plan = { ...planOf(sessions), newStudents: [newcomer], answers: '["row 2"]', rows: 5 };
    const result = insertImport(db, scope, plan, importDoor());
    const counts = { students: 1, sessions: 2, swings: 5, readings: 5, skipped: 0, conflicts: [] };
    expect(result).toMatchObject({ kind: "imported", ...counts });
    const nino = readStudents(db, scope).find((student) => student.alias === "Nino");
    expect(nino).toMatchObject({ hand: "right", birthYear: 2017, zone: "Europe/Vienna", clubs: "", revision: 1 });
    const consents = readConsents(db, studentScope(nino?.id));
    expect(consents).toMatchObject([{ kind: "measure", givenBy: "Mother", from: "2031-03-01", until: "2032-02-29" }]);
    expect(readImportBatches(db, scope)).toMatchObject([{ fileName: "values.csv", readings: 5, answers: '["row 2"]' }]);
    expect(db.sqlite.prepare("SELECT count(DISTINCT batch_id) FROM reading").pluck().get()).toBe(1);
    expect([revisionOf(db), revisionOf(db, "s2")]).toEqual([1, 0]);
  });

  test("of the same content a second time changes nothing and names the first; another academy may have it too", async () => {
    const db = await openAcademy();
    const plan = planOf([["Ulla", sessionOn("2031-02-01")]]);
    insertImport(db, scope, plan, importDoor("i"));
    const before = await digestTables(db);
    const again = insertImport(db, scope, { ...plan, fileName: "renamed.csv" }, importDoor("j"));
    expect(again).toMatchObject({ kind: "already-imported", batch: { fileName: "values.csv", readings: 3 } });
    expect(await digestTables(db)).toEqual(before);
    const door = { ...importDoor("k"), scopeOf: (id: string) => studentScope(id, "a2") };
    expect(insertImport(db, academyScope("a2"), plan, door)).toMatchObject({ kind: "imported", readings: 3 });
  });

  test("of a file with one row more adds that row, without a sequence too", async () => {
    const db = await openAcademy();
    const day = (values: number[]) => sessionOn("2031-02-01", { sequence: null, swings: swings(...values) });
    const file = (...values: number[]) =>
      planOf([
        ["Ulla", day(values)],
        ["Ulla", day([50])],
      ]);
    insertImport(db, scope, file(80, 81), importDoor("i"));
    const result = insertImport(db, scope, { ...file(80, 81, 82), contentHash: "hash-2" }, importDoor("j"));
    expect(result).toMatchObject({ kind: "imported", sessions: 0, swings: 1, readings: 1, skipped: 3, conflicts: [] });
    expect(readSessions(db, studentScope()).map((session) => session.sequence)).toEqual([1, 2]);
    expect(readReadingsInForce(db, studentScope()).map((reading) => reading.value)).toEqual([80, 81, 82, 50]);
    expect(revisionOf(db)).toBe(2);
  });

  test("with other values than those on file hands them back, and writes all the rest", async () => {
    const db = await openAcademy();
    insertImport(db, scope, planOf([["Ulla", sessionOn("2031-02-01", { swings: swings(80, 81) })]]), importDoor("i"));
    const other = sessionOn("2031-02-01", { swings: swings(80, 18, 82), note: "changed", circumstance: "in-lesson" });
    const result = insertImport(db, scope, { ...planOf([["Ulla", other]]), contentHash: "2" }, importDoor("j"));
    const place = { alias: "Ulla", studentId: "s1", day: "2031-02-01", clubGroup: "iron", swing: 2 };
    const values = { onFile: { value: 81, typed: "81" }, given: { value: 18, typed: "18" } };
    expect(result).toMatchObject({ readings: 1, skipped: 1, conflicts: [{ ...place, ...values }] });
    expect(readReadingsInForce(db, studentScope()).map((reading) => reading.value)).toEqual([80, 81, 82]);
    expect(readSessions(db, studentScope())).toMatchObject([{ note: null, circumstance: "unaided" }]);
  });

  test("of a value that was corrected since is no conflict, neither as first read nor as corrected", async () => {
    const db = await openAcademy();
    insertImport(db, scope, planOf([["Ulla", sessionOn("2031-02-01", { swings: swings(80) })]]), importDoor("i"));
    const id = readReadingsInForce(db, studentScope())[0]?.id ?? 0;
    const correction = { readingId: id, value: 85, typed: "85", who: "Coach", why: "frame", now: NOW };
    insertCorrection(db, studentScope(), correction);
    const outcomes = [80, 85, 90].map((value) => {
      const plan = planOf([["Ulla", sessionOn("2031-02-01", { swings: swings(value) })]]);
      const result = insertImport(db, scope, { ...plan, contentHash: `${value}` }, importDoor(`v${value}`));
      return result.kind === "imported" ? [result.skipped, result.conflicts.length] : [];
    });
    expect(outcomes).toEqual([
      [1, 0],
      [1, 0],
      [0, 1],
    ]);
    expect(readReadingsInForce(db, studentScope()).map((reading) => reading.value)).toEqual([85]);
  });

  test("adds a camera record that was missing, and keeps the one on file", async () => {
    const db = await openAcademy();
    const [bare, withCamera] = [sessionOn("2031-02-01"), season(1, 1)[0]?.captures ?? []];
    insertImport(db, scope, planOf([["Ulla", bare]]), importDoor("i"));
    const placed = { ...bare, captures: withCamera };
    insertImport(db, scope, { ...planOf([["Ulla", placed]]), contentHash: "2" }, importDoor("j"));
    const moved = { ...bare, captures: withCamera.map((one) => ({ ...one, placementLabel: "elsewhere" })) };
    insertImport(db, scope, { ...planOf([["Ulla", moved]]), contentHash: "3" }, importDoor("k"));
    expect(readCaptures(db, studentScope()).map((one) => one.placementLabel)).toEqual(["bay 1"]);
    expect(revisionOf(db)).toBe(2);
  });

  test("that names somebody unknown writes nothing and names them", async () => {
    const db = await openAcademy();
    const plan = planOf([
      ["Ulla", sessionOn("2031-02-01")],
      ["Zoe", sessionOn("2031-02-01")],
      ["Zoe", sessionOn("2031-02-02")],
    ]);
    expect(insertImport(db, scope, plan, importDoor())).toEqual({ kind: "unknown-students", aliases: ["Zoe"] });
    expect([countRows(db, "session"), countRows(db, "import_batch")]).toEqual([0, 0]);
  });

  test("that the gate stops for one student, or that fails at any row, leaves nothing", async () => {
    const db = await openAcademy();
    const before = await digestTables(db);
    const sessions = season(4, 3).map((session, index) => [index % 2 ? "Ulla" : "Nino", session] as const);
    const plan = { ...planOf(sessions), newStudents: [newcomer] };
    const closed = {
      ...importDoor(),
      scopeOf: (): never => {
        throw new Error("not yours");
      },
    };
    expect(() => insertImport(db, scope, plan, closed)).toThrow("not yours");
    expect(await digestTables(db)).toEqual(before);
    for (const [table, rows] of [
      ["student", 4],
      ["session", 3],
      ["swing", 7],
      ["reading", 1],
      ["reading", 36],
      ["capture", 4],
    ] as const) {
      db.sqlite.exec(`CREATE TRIGGER fail AFTER INSERT ON ${table} WHEN (SELECT count(*) FROM ${table}) >= ${rows}
        BEGIN SELECT RAISE(ABORT, 'disk failed'); END`);
      expect(() => insertImport(db, scope, plan, importDoor())).toThrow("disk failed");
      db.sqlite.exec("DROP TRIGGER fail");
      expect(await digestTables(db)).toEqual(before);
    }
    expect(insertImport(db, scope, plan, importDoor())).toMatchObject({ kind: "imported", readings: 36 });
  });

  test("in any split and any order ends with the same readings, and once more adds none", async () => {
    const row = fc.record({
      alias: fc.constantFrom("Ulla", "Ferdi"),
      day: fc.constantFrom("2031-02-01", "2031-02-02"),
      sequence: fc.integer({ min: 1, max: 2 }),
      swing: fc.integer({ min: 1, max: 3 }),
      fundamentalId: fc.constantFrom("hinge" as const, "foot-line" as const),
      value: fc.option(fc.integer({ min: -5, max: 5 })),
    });
    type Row = typeof row extends fc.Arbitrary<infer R> ? R : never;
    const toSession = (r: Row): readonly [string, EnteredSession] => [
      r.alias,
      sessionOn(r.day, {
        sequence: r.sequence,
        swings: [{ number: r.swing, note: null, readings: [entered(r.value, r.fundamentalId)] }],
      }),
    ];
    const place = (r: Row) => JSON.stringify([r.alias, r.day, r.sequence, r.swing, r.fundamentalId]);
    const db = await openAcademy();
    let runs = 0;
    const load = (rows: readonly Row[]) => {
      runs += 1;
      const plan = { ...planOf(rows.map(toSession)), contentHash: `hash ${runs}` };
      const result = insertImport(db, scope, plan, importDoor(`r${runs}-`));
      if (result.kind !== "imported") throw new Error(result.kind);
      return result;
    };
    fc.assert(
      fc.property(fc.array(row, { maxLength: 30 }), fc.nat(30), (rows, cut) => {
        db.sqlite.exec("DELETE FROM session; DELETE FROM import_batch");
        const parts = [load(rows.slice(0, cut)), load(rows.slice(cut))];
        const first = new Map<string, Row>();
        for (const r of rows) if (!first.has(place(r))) first.set(place(r), r);
        const found = ["s1", "s2"].flatMap((id) => readReadingsInForce(db, studentScope(id)).map((one) => one.value));
        expect(found.length).toBe(first.size);
        expect([...found].sort()).toEqual([...first.values()].map((r) => r.value).sort());
        const differing = rows.filter((r) => first.get(place(r))?.value !== r.value).length;
        expect(parts.reduce((sum, part) => sum + part.readings, 0)).toBe(first.size);
        expect(parts.reduce((sum, part) => sum + part.conflicts.length, 0)).toBe(differing);
        const revisions = [revisionOf(db), revisionOf(db, "s2")];
        const again = load(rows);
        expect([again.sessions, again.swings, again.readings]).toEqual([0, 0, 0]);
        expect(again.skipped + again.conflicts.length).toBe(rows.length);
        expect([revisionOf(db), revisionOf(db, "s2")]).toEqual(revisions);
      }),
      { numRuns: manyCases(150) },
    );
  });
});
