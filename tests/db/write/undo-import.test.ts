import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { digestTables } from "@/db/backup";
import type { Database } from "@/db/client";
import { readBuiltOnImport } from "@/db/read/built-on-import";
import { readImportBatchById, readImportBatches, readImportedStudents } from "@/db/read/import-batches";
import { readStudents } from "@/db/read/students";
import { insertAsking } from "@/db/write/asking";
import { insertDraft } from "@/db/write/drafts";
import { insertAssignment } from "@/db/write/drills";
import { insertEvent } from "@/db/write/events";
import { insertGoalBand } from "@/db/write/goal-bands";
import { insertImport } from "@/db/write/imports";
import { insertLookNoise } from "@/db/write/looks";
import { insertNoiseModel } from "@/db/write/noise-models";
import { insertCorrection, insertReadings } from "@/db/write/readings";
import { insertRereadDraw } from "@/db/write/rereads";
import { insertSession } from "@/db/write/sessions";
import { insertConsent, insertHeight } from "@/db/write/students";
import { KEPT_FILE, undoImport } from "@/db/write/undo-import";
import type { EnteredSession, ImportPlan } from "@/lib/domain/session-entry";
import {
  academyScope,
  countingStamp,
  countRows,
  entered,
  revisionOf,
  sessionOn,
  studentScope,
  swings,
} from "../academy-fixture";
import { planOf as firstPlan, importDoor, openFilledAcademy, season } from "../filled-academy";

const LATER = "2031-03-02T10:00:00.000Z";
const LATEST = "2031-03-03T10:00:00.000Z";
const scope = academyScope();
const undoing = { now: LATEST, who: "Owner", scopeOf: (id: string) => studentScope(id) };
const newcomer = { alias: "Nino", hand: "right", birthYear: 2017, consentGivenBy: "Mother" } as const;
const measure = { kind: "measure", givenBy: "Father", from: "2031-03-02", until: null, withdrawnOn: null } as const;

/** The academy was filled from a file already; these are others. */
const planOf: typeof firstPlan = (sessions) => ({ ...firstPlan(sessions), contentHash: "another file" });

/** What every table holds but the batches and how often students' data changed. */
async function held(db: Database): Promise<unknown> {
  const { import_batch: _batches, student: _students, ...rest } = await digestTables(db);
  const people = db.sqlite.prepare("SELECT * FROM student ORDER BY id").all() as Record<string, unknown>[];
  return { rest, people: people.map(({ revision: _revision, ...person }) => person) };
}

function load(db: Database, plan: ImportPlan, prefix = "b", consents: readonly string[] = []) {
  const given = consents.map((studentId) => ({ studentId, consent: measure }));
  const made = insertImport(db, scope, plan, { ...importDoor(prefix, LATER), consents: given });
  if (made.kind !== "imported") throw new Error(made.kind);
  return made;
}

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
      { numRuns: 120, seed: 20310302 },
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

  test("is undone once, by its own academy alone, and gives back the file that was kept", async () => {
    const db = await openFilledAcademy();
    const { batchId } = load(db, planOf([["Ferdi", sessionOn("2031-02-01")]]));
    insertDraft(db, scope, { id: batchId, kind: KEPT_FILE, body: "the file", updatedAt: LATER });
    expect(undoImport(db, academyScope("a2"), batchId, undoing)).toEqual({ kind: "not-there" });
    expect(undoImport(db, scope, batchId, undoing)).toMatchObject({ kind: "undone", file: "kept" });
    expect(db.sqlite.prepare("SELECT kind, body FROM draft WHERE id = ?").get(batchId)).toEqual({
      kind: "import",
      body: "the file",
    });
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

/** Acts of others after the import, each with what the refusal is to name. */
const ACTS: Readonly<Record<string, (db: Database, at: { session: string; student: string }) => void>> = {
  correction: (db, { session, student }) => {
    const readingId = db.sqlite
      .prepare<[string], number>("SELECT id FROM reading WHERE session_id = ?")
      .pluck()
      .get(session);
    const change = { readingId: readingId ?? 0, value: 1, typed: "1", who: "Coach", why: "still", now: LATEST };
    insertCorrection(db, studentScope(student), change);
  },
  reread: (db, { session, student }) => {
    const swingId =
      db.sqlite.prepare<[string], number>("SELECT id FROM swing WHERE session_id = ?").pluck().get(session) ?? 0;
    const place = { studentId: student, sessionId: session, swingId, fundamentalId: "hinge" } as const;
    const draw = { id: "r9", reader: "Coach", level: "b", who: "Owner", day: "2031-03-03", drawnAt: LATEST } as const;
    insertRereadDraw(db, scope, { ...draw, items: [{ ...place, filmReference: "shelf 9" }] });
  },
  reading: (db, { session, student }) => {
    const added = { sessionId: session, reader: "Second", reading: "first", swings: swings(5) } as const;
    insertReadings(db, studentScope(student), added, { now: LATEST, batchId: null });
  },
  session: (db, { student }) => {
    insertSession(db, studentScope(student), sessionOn("2031-03-03"), {
      ...countingStamp("by-hand", LATEST),
      batchId: null,
    });
  },
  change: (db, { session, student }) => {
    db.sqlite
      .prepare(
        `INSERT INTO record_change (academy_id, kind, student_id, session_id, before, after, who, why, changed_at)
         VALUES ('a1', 'session-facts', ?, ?, '{}', '{}', 'Owner', 'wrong day', ?)`,
      )
      .run(student, session, LATEST);
  },
  asking: (db, { student }) => {
    const asked = {
      fundamentalId: "hinge",
      clubGroup: "iron",
      state: "stopped",
      day: "2031-03-03",
      who: "Owner",
    } as const;
    insertAsking(db, studentScope(student), { ...asked, plan: null }, LATEST);
  },
  drill: (db, { student }) => {
    const given = {
      id: "g9",
      drillId: "d1",
      fundamentalId: "hinge",
      start: "2031-03-03",
      end: null,
      dose: "20",
    } as const;
    insertAssignment(db, studentScope(student), given);
    db.sqlite.prepare("UPDATE drill_assignment SET recorded_at = ? WHERE id = 'g9'").run(LATEST);
  },
  "goal-band": (db, { student }) => {
    const band = { fundamentalId: "hinge", clubGroup: "iron", scope: "student", ageFrom: null, ageTo: null } as const;
    const goal = { studentId: student, low: 80, high: null, from: "2031-03-03", reason: "wrist" } as const;
    insertGoalBand(db, scope, { ...band, ...goal }, countingStamp("later-band", LATEST));
  },
};

/** Acts that count only for a student whom the import itself added. */
const NEW_STUDENT_ACTS: typeof ACTS = {
  practice: (db, { student }) => {
    db.sqlite
      .prepare(
        `INSERT INTO practice (id, student_id, day, minutes, source, who, recorded_at)
         VALUES ('p9', ?, '2031-03-03', 10, 'coach', 'Owner', ?)`,
      )
      .run(student, LATEST);
  },
  event: (db, { student }) =>
    insertEvent(db, studentScope(student), { id: "e9", kind: "growth", day: "2031-03-03", note: "", rebaselines: [] }),
  consent: (db, { student }) => {
    insertConsent(db, studentScope(student), { ...measure, kind: "share" }, countingStamp("share", LATEST));
  },
  height: (db, { student }) => insertHeight(db, studentScope(student), { day: "2031-03-03", cm: 150 }),
  draft: (db, { student }) =>
    insertDraft(db, scope, { id: "f9", kind: "session", studentId: student, body: "{}", updatedAt: LATEST }),
};

describe("an import on which something was built", () => {
  const plan = { ...planOf([["Nino", sessionOn("2031-02-01")]]), newStudents: [newcomer] };
  const file = (alias: string) => (alias === "Nino" ? plan : planOf([[alias, sessionOn("2031-02-01")]]));

  for (const [kind, act] of Object.entries({ ...ACTS, ...NEW_STUDENT_ACTS })) {
    const names = kind in ACTS && kind !== "session" ? ["Nino", "Ferdi"] : ["Nino"];
    test(`${kind} after it, of ${names.join(" and of ")}: the undo says what and whose, and changes nothing`, async () => {
      for (const alias of names) {
        const db = await openFilledAcademy();
        const { batchId } = load(db, file(alias));
        const at = db.sqlite
          .prepare<[string], { session: string; student: string }>(
            "SELECT id AS session, student_id AS student FROM session WHERE batch_id = ?",
          )
          .get(batchId);
        if (!at) throw new Error("no session came with it");
        act(db, at);
        const before = await digestTables(db);
        const outcome = undoImport(db, scope, batchId, undoing);
        expect(outcome).toMatchObject({ kind: "built-on" });
        const built = outcome.kind === "built-on" ? outcome.built : [];
        expect(built).toContainEqual(expect.objectContaining({ kind, alias, studentId: at.student, count: 1 }));
        expect(await digestTables(db)).toEqual(before);
      }
    });
  }

  test("what others entered before it, or beside it for a known student, holds nothing up", async () => {
    const db = await openFilledAcademy();
    const { batchId } = load(db, file("Ferdi"));
    const at = { session: "", student: "s2" };
    for (const act of [ACTS.session, ...Object.values(NEW_STUDENT_ACTS)]) act?.(db, at);
    const batch = readImportBatchById(db, scope, batchId);
    expect(batch && readBuiltOnImport(db, scope, batch)).toEqual([]);
    const counts = ["practice", "event", "height", "draft"].map((table) => countRows(db, table));
    expect(undoImport(db, scope, batchId, undoing)).toMatchObject({ kind: "undone", sessions: 1, readings: 3 });
    expect(["practice", "event", "height", "draft"].map((table) => countRows(db, table))).toEqual(counts);
  });

  test("a session filmed under a consent that it brought keeps that consent", async () => {
    const db = await openFilledAcademy();
    const { batchId } = load(db, file("Ferdi"), "b", ["s2"]);
    ACTS.session?.(db, { session: "", student: "s2" });
    expect(undoImport(db, scope, batchId, undoing)).toMatchObject({
      kind: "built-on",
      built: [{ kind: "session", alias: "Ferdi", day: "2031-03-03" }],
    });
  });
});
