import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { digestTables } from "@/db/backup";
import { readImportBatchById, readImportBatches, readImportedStudents } from "@/db/read/import-batches";
import { readStudents } from "@/db/read/students";
import { insertDraft } from "@/db/write/drafts";
import { updateDraftToKept } from "@/db/write/kept-files";
import { insertLookNoise } from "@/db/write/looks";
import { insertNoiseModel } from "@/db/write/noise-models";
import { insertCorrection } from "@/db/write/readings";
import { undoImport } from "@/db/write/undo-import";
import type { EnteredSession, ImportPlan } from "@/lib/domain/session-entry";
import { manyCases } from "../../many-cases";
import { academyScope, entered, revisionOf, sessionOn, studentScope, swings } from "../academy-fixture";
import { openFilledAcademy, season } from "../filled-academy";
import { held, LATER, LATEST, load, newcomer, planOf, scope, undoing } from "../undone-fixture";

const row = fc.record({
  alias: fc.constantFrom("Ulla", "Ferdi", "Nino"),
  // Ulla's first season lies on the first three days of the year: new rows fall beside old ones.
  day: fc.constantFrom("2031-01-01", "2031-01-03", "2031-02-01"),
  sequence: fc.constantFrom(1, 1, 2),
  swing: fc.integer({ min: 1, max: 6 }),
  fundamentalId: fc.constantFrom("hinge" as const, "foot-line" as const, "setup-tilt" as const),
  value: fc.option(fc.integer({ min: -5, max: 95 })),
  camera: fc.boolean(),
});
type Row = typeof row extends fc.Arbitrary<infer R> ? R : never;

function planOfRows(rows: readonly Row[], contentHash: string): ImportPlan {
  const sessions = rows.map((r): readonly [string, EnteredSession] => [
    r.alias,
    sessionOn(r.day, {
      sequence: r.sequence,
      captures: r.camera ? (season(1, 1)[0]?.captures ?? []) : [],
      statedCaptureSds: r.camera ? [{ fundamentalId: r.fundamentalId, sd: 0.7 }] : [],
      swings: [{ number: r.swing, note: null, readings: [entered(r.value, r.fundamentalId)] }],
    }),
  ]);
  return { ...planOf(sessions), newStudents: [newcomer], contentHash };
}

describe("an import that is undone", () => {
  test("leaves every table as it was, its batch and the count of changes aside; then it can come again", async () => {
    const db = await openFilledAcademy();
    const before = await held(db);
    let runs = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.array(row, { minLength: 1, maxLength: 25 }),
        fc.subarray(["s1", "s2"]),
        async (rows, given) => {
          runs += 1;
          const plan = planOfRows(rows, `file ${runs}`);
          const first = load(db, plan, `a${runs}-`, given);
          const changed = readStudents(db, scope).filter((student) => revisionOf(db, student.id) !== 0);
          const revisions = changed.map((student) => [student.id, revisionOf(db, student.id)] as const);
          const touched = readImportedStudents(db, scope, first.batchId).map((student) => student.id);
          expect(undoImport(db, scope, first.batchId, undoing)).toMatchObject({
            kind: "undone",
            students: first.students,
            sessions: first.sessions,
            readings: first.readings,
          });
          expect(await held(db)).toEqual(before);
          for (const [id, revision] of revisions)
            if (touched.includes(id) && revisionOf(db, id) !== undefined)
              expect(revisionOf(db, id)).toBe((revision ?? 0) + 1);
          const again = load(db, plan, `z${runs}-`, given);
          const { batchId: _first, ...counts } = first;
          expect(again).toMatchObject({ ...counts, conflicts: counts.conflicts.map(({ given }) => ({ given })) });
          expect(undoImport(db, scope, again.batchId, undoing).kind).toBe("undone");
        },
      ),
      { numRuns: manyCases(120), seed: 20310302 },
    );
    expect(await held(db)).toEqual(before);
    expect(db.sqlite.pragma("foreign_key_check")).toEqual([]);
  });

  test("takes with it exactly its own rows: what another import brought to the same sessions stays", async () => {
    const db = await openFilledAcademy();
    const mine = load(db, planOf([["Ferdi", sessionOn("2031-02-01", { swings: swings(1, 2) })]]), "m");
    const more = sessionOn("2031-02-01", { swings: [{ number: 3, note: null, readings: [entered(3)] }] });
    const theirs = load(db, { ...planOf([["Ferdi", more]]), contentHash: "theirs" }, "t");
    expect(undoImport(db, scope, mine.batchId, undoing)).toMatchObject({
      kind: "built-on",
      built: [{ kind: "reading", alias: "Ferdi", day: "2031-02-01", count: 1 }],
    });
    expect(undoImport(db, scope, theirs.batchId, undoing)).toMatchObject({ kind: "undone", readings: 1, sessions: 0 });
    expect(undoImport(db, scope, mine.batchId, undoing)).toMatchObject({ kind: "undone", readings: 2, sessions: 1 });
    expect(readImportBatches(db, scope).filter((batch) => batch.undoneBy === "Owner").length).toBe(2);
  });

  test("says no to what was corrected since, whatever the clock said", async () => {
    const db = await openFilledAcademy();
    const { batchId } = load(db, planOf([["Ferdi", sessionOn("2031-02-01")]]));
    const readingId =
      db.sqlite.prepare<[string], number>("SELECT id FROM reading WHERE batch_id = ?").pluck().get(batchId) ?? 0;
    const early = { who: "Coach", why: "wrong still", now: "2001-01-01T00:00:00.000Z" };
    insertCorrection(db, studentScope("s2"), { readingId, value: 1, typed: "1", ...early });
    expect(undoImport(db, scope, batchId, undoing)).toMatchObject({
      kind: "built-on",
      built: [{ kind: "correction", alias: "Ferdi", count: 1 }],
    });
  });

  test("is undone once, by its own academy alone, and gives back the file that was kept", async () => {
    const db = await openFilledAcademy();
    const { batchId } = load(db, planOf([["Ferdi", sessionOn("2031-02-01")]]));
    insertDraft(db, scope, { id: "f9", kind: "import", body: "the head", updatedAt: LATER });
    insertDraft(db, scope, { id: "f9.file", kind: "import-file", body: "the file", updatedAt: LATER });
    insertDraft(db, scope, { id: "f99", kind: "import", body: "another", updatedAt: LATER });
    updateDraftToKept(db, scope, { draftId: "f9", batchId, now: LATER });
    expect(undoImport(db, academyScope("a2"), batchId, undoing)).toEqual({ kind: "not-there" });
    expect(undoImport(db, scope, batchId, undoing)).toMatchObject({ kind: "undone", file: "given" });
    const drafts = db.sqlite
      .prepare("SELECT id, kind, body FROM draft WHERE id > 'b' AND id <> 'f1' ORDER BY body")
      .all();
    expect(drafts).toEqual([
      { id: "f99", kind: "import", body: "another" },
      { id: `${batchId}.file`, kind: "import-file", body: "the file" },
      { id: batchId, kind: "import", body: "the head" },
    ]);
    expect(undoImport(db, scope, batchId, undoing)).toEqual({ kind: "undone-before" });
    expect(readImportBatchById(db, scope, batchId)).toMatchObject({ undoneAt: LATEST, undoneBy: "Owner", readings: 3 });
  });

  test("takes the looks at it along, and the noise model that no other look was said with", async () => {
    const db = await openFilledAcademy();
    const before = await held(db);
    const onFile = db.sqlite.prepare<[], string>("SELECT id FROM session ORDER BY day").pluck().get() ?? "";
    const foot = sessionOn("2031-01-01", {
      swings: [{ number: 1, note: null, readings: [entered(4, "foot-line")] }],
    });
    const { batchId } = load(
      db,
      planOf([
        ["Ulla", foot],
        ["Ulla", sessionOn("2031-02-01")],
      ]),
    );
    const learn = (pool: string) => {
      const model = { pool, learnedUpTo: "2031-02-01", poolSessions: 60, fittedAt: LATER, body: "{}" };
      return insertNoiseModel(db, scope, { ...model, nameOf: (number) => `${pool}#${number}` }).name;
    };
    const [hinge, feet] = [learn("hinge iron"), learn("foot-line iron")];
    const fresh = db.sqlite.prepare<[], string>("SELECT id FROM session WHERE day = '2031-02-01'").pluck().get() ?? "";
    insertLookNoise(db, studentScope(), [
      { sessionId: fresh, fundamentalId: "hinge", clubGroup: "iron", noiseModelName: hinge },
      { sessionId: onFile, fundamentalId: "foot-line", clubGroup: "iron", noiseModelName: feet },
    ]);
    expect(undoImport(db, scope, batchId, undoing).kind).toBe("undone");
    expect(await held(db)).toEqual(before);
  });

  test("keeps a noise model that a look of somebody else was said with", async () => {
    const db = await openFilledAcademy();
    const { batchId } = load(db, planOf([["Ferdi", sessionOn("2031-02-01")]]));
    const model = { pool: "hinge iron", learnedUpTo: "2031-02-01", poolSessions: 60, fittedAt: LATER, body: "{}" };
    const { name } = insertNoiseModel(db, scope, { ...model, nameOf: (number) => `hinge iron#${number}` });
    const look = (day: string, id: string) => ({
      sessionId:
        db.sqlite
          .prepare<[string, string], string>("SELECT id FROM session WHERE day = ? AND student_id = ?")
          .pluck()
          .get(day, id) ?? "",
      fundamentalId: "hinge" as const,
      clubGroup: "iron",
      noiseModelName: name,
    });
    insertLookNoise(db, studentScope("s2"), [look("2031-02-01", "s2")]);
    insertLookNoise(db, studentScope(), [look("2031-01-02", "s1")]);
    expect(undoImport(db, scope, batchId, undoing).kind).toBe("undone");
    expect(db.sqlite.prepare("SELECT count(*) FROM noise_model WHERE name = ?").pluck().get(name)).toBe(1);
    expect(db.sqlite.prepare("SELECT count(*) FROM look_noise WHERE noise_model_name = ?").pluck().get(name)).toBe(1);
  });

  test("that fails at any table leaves all of it", async () => {
    const db = await openFilledAcademy();
    const rows = [
      { alias: "Nino", day: "2031-02-01", sequence: 1, swing: 1, fundamentalId: "hinge", value: 3 },
    ] as const;
    const { batchId } = load(db, planOfRows([{ ...rows[0], camera: true }], "file"), "b", ["s2"]);
    const before = await digestTables(db);
    for (const table of ["reading", "swing", "capture", "stated_capture_sd", "session", "consent", "student"]) {
      db.sqlite.exec(`CREATE TRIGGER fail AFTER DELETE ON ${table} BEGIN SELECT RAISE(ABORT, 'disk failed'); END`);
      expect(() => undoImport(db, scope, batchId, undoing)).toThrow("disk failed");
      db.sqlite.exec("DROP TRIGGER fail");
      expect(await digestTables(db)).toEqual(before);
    }
    expect(undoImport(db, scope, batchId, undoing).kind).toBe("undone");
  });
});
