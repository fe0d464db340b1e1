import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { IN_MEMORY, openDatabase } from "@/db/client";
import { digestTables } from "@/db/digest";
import { migrateDb } from "@/db/migrate";
import { readArchivedRules } from "@/db/read/archive-rules";
import { readArchivedRereads, readArchivedStudent, readArchivedStudentIds } from "@/db/read/archive-student";
import { insertAcademy } from "@/db/write/academies";
import { insertArchive } from "@/db/write/archive";
import { undoImport } from "@/db/write/undo-import";
import { type Archive, archiveText } from "@/lib/domain/archive";
import type { ArchivePlan } from "@/lib/domain/archive-plan";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import { SINCE_EVER } from "@/lib/domain/goal-band";
import { planArchive } from "@/lib/ingest/plan-archive";
import { readArchive } from "@/lib/ingest/read-archive";
import { anyArchive } from "../../lib/ingest/made-archive";
import { manyCases } from "../../many-cases";
import { academyScope, countingStamp, NOW, painScope, studentScope } from "../academy-fixture";

const SEED = 20261126;
const RUNS = manyCases(150);
const door = { ...countingStamp("new"), door: "archive" as const };

async function emptyAcademy() {
  const db = openDatabase(IN_MEMORY);
  await migrateDb(db);
  const kept = { fixedToday: null, seasonStart: SINCE_EVER, createdAt: NOW };
  const names = { id: "a1", name: "Range", ownerName: "Owner", zone: "UTC", locale: "en", kind: "own" as const };
  insertAcademy(db, { ...names, ...kept });
  return db;
}

type Database = Awaited<ReturnType<typeof emptyAcademy>>;

function outAgain(db: Database, like: Archive): Archive {
  const scopes = readArchivedStudentIds(db, academyScope()).map((id) => studentScope(id));
  return {
    ...like,
    rules: readArchivedRules(db, academyScope()),
    students: scopes.map((scope) => ({ ...readArchivedStudent(db, scope, painScope(scope.studentId)), snapshots: [] })),
    rereads: readArchivedRereads(db, academyScope(), scopes),
  };
}

function planFor(db: Database, archive: Archive): ArchivePlan {
  const onFile = {
    students: [],
    rules: readArchivedRules(db, academyScope()),
    grouping: SHORT_LIST,
    sessions: [],
    others: 0,
  };
  const { plan } = planArchive(archive, onFile, { fileName: "x.zip", contentHash: "h" }, new Map());
  if (!plan) throw new Error("something stands in the way");
  return plan;
}

describe("an archive in the database", () => {
  it(`${RUNS} generated academies with hostile texts (seed ${SEED}): in and out again is the same text byte for byte`, async () => {
    await fc.assert(
      fc.asyncProperty(anyArchive, async (archive) => {
        const text = archiveText(archive);
        const read = readArchive(new TextEncoder().encode(text));
        if (read.kind !== "archive") throw new Error(JSON.stringify(read));
        const db = await emptyAcademy();
        try {
          const made = insertArchive(db, academyScope(), planFor(db, read.archive), door);
          expect(made).toMatchObject({ kind: "imported", students: archive.students.length });
          expect(archiveText(outAgain(db, archive))).toBe(text);
        } finally {
          db.close();
        }
      }),
      { seed: SEED, numRuns: RUNS },
    );
  }, 120_000);

  it("fails whole: a plan that names a drill it doesn't hold leaves every table as it was", async () => {
    const [archive] = fc.sample(anyArchive, { seed: SEED, numRuns: 1 });
    if (!archive) throw new Error("nothing made");
    const db = await emptyAcademy();
    const before = await digestTables(db);
    const plan = planFor(db, archive);
    expect(() => insertArchive(db, academyScope(), { ...plan, rules: { ...plan.rules, drills: [] } }, door)).toThrow(
      "d1",
    );
    expect(await digestTables(db)).toEqual(before);
    db.close();
  });

  it("the same content twice is written once", async () => {
    const [archive] = fc.sample(anyArchive, { seed: SEED, numRuns: 1 });
    if (!archive) throw new Error("nothing made");
    const db = await emptyAcademy();
    const plan = planFor(db, archive);
    expect(insertArchive(db, academyScope(), plan, door).kind).toBe("imported");
    const before = await digestTables(db);
    expect(insertArchive(db, academyScope(), plan, door).kind).toBe("already-imported");
    expect(await digestTables(db)).toEqual(before);
    db.close();
  });

  it("is taken back whole while nothing was built on it: its own corrections, events and heights came with it", async () => {
    const [archive] = fc
      .sample(anyArchive, { seed: SEED, numRuns: 60 })
      .filter(
        (one) => archiveText(one).includes('"correctedAt"') && one.students.some(({ heights }) => heights.length),
      );
    if (!archive) throw new Error("nothing made");
    const db = await emptyAcademy();
    const late = { ...door, now: "2099-01-01T00:00:00.000Z" };
    const made = insertArchive(db, academyScope(), planFor(db, archive), late);
    if (made.kind !== "imported") throw new Error(made.kind);
    const undo = () =>
      undoImport(db, academyScope(), made.batchId, { now: late.now, who: "Owner", scopeOf: (id) => studentScope(id) });
    const count = (table: string) => db.sqlite.prepare<[], number>(`SELECT count(*) FROM ${table}`).pluck().get();
    const reading = db.sqlite.prepare<[], number>("SELECT id FROM reading LIMIT 1").pluck().get();
    const mend =
      "INSERT INTO correction (reading_id, typed, who, why, corrected_at) VALUES (?, '', '', '', '2099-02-01')";
    const { lastInsertRowid } = db.sqlite.prepare(mend).run(reading);
    expect(undo()).toMatchObject({ kind: "built-on", built: [{ kind: "correction", count: 1 }] });
    db.sqlite.prepare("DELETE FROM correction WHERE id = ?").run(lastInsertRowid);
    expect(undo()).toMatchObject({ kind: "undone", students: archive.students.length });
    const gone = [
      "student",
      "session",
      "swing",
      "reading",
      "correction",
      "event",
      "height",
      "practice",
      "asking",
      "look_noise",
    ];
    for (const table of gone) expect(`${table} ${count(table)}`).toBe(`${table} 0`);
    expect(insertArchive(db, academyScope(), planFor(db, archive), late).kind).toBe("imported");
    db.close();
  });

  it("is taken back with a consent that came withdrawn; a withdrawal of later keeps it, whatever day that is of", async () => {
    const [first] = fc.sample(anyArchive, { seed: SEED, numRuns: 1 });
    const [student] = first?.students ?? [];
    if (!first || !student) throw new Error("nothing made");
    const given = {
      ...({ kind: "measure", givenBy: "Mother", giverIs: "guardian", fromDay: "2020-01-01", untilDay: null } as const),
      ...{ withdrawnBy: null, recordedAt: NOW },
    };
    const consents = [
      { ...given, id: "no", withdrawnOn: "2099-01-01" },
      { ...given, id: "yes", withdrawnOn: null },
    ];
    const archive = { ...first, students: [{ ...student, consents }], rereads: [] };
    const rules = { ...first.rules, goalBands: first.rules.goalBands.filter((band) => band.studentId === null) };
    for (const [later, kind] of [
      ["", "undone"],
      ["2021-05-04", "built-on"],
    ] as const) {
      const db = await emptyAcademy();
      const late = { ...door, now: "2098-01-01T00:00:00.000Z" };
      const made = insertArchive(db, academyScope(), planFor(db, { ...archive, rules }), late);
      if (made.kind !== "imported") throw new Error(made.kind);
      if (later !== "") db.sqlite.prepare("UPDATE consent SET withdrawn_on = ? WHERE id = 'yes'").run(later);
      const undoing = { now: late.now, who: "Owner", scopeOf: (id: string) => studentScope(id) };
      expect(undoImport(db, academyScope(), made.batchId, undoing)).toMatchObject(
        kind === "undone" ? { kind } : { kind, built: [{ kind: "consent", count: 1 }] },
      );
      db.close();
    }
  });
});
