import { describe, expect, test } from "vitest";
import { digestTables } from "@/db/backup";
import type { Database } from "@/db/client";
import { readBuiltOnImport } from "@/db/read/built-on-import";
import { readImportBatchById } from "@/db/read/import-batches";
import { insertAsking } from "@/db/write/asking";
import { insertDraft } from "@/db/write/drafts";
import { insertAssignment } from "@/db/write/drills";
import { insertEvent } from "@/db/write/events";
import { insertGoalBand } from "@/db/write/goal-bands";
import { insertCorrection, insertReadings } from "@/db/write/readings";
import { insertRereadDraw } from "@/db/write/rereads";
import { insertSession } from "@/db/write/sessions";
import { insertConsent, insertHeight } from "@/db/write/students";
import { undoImport } from "@/db/write/undo-import";
import { countingStamp, countRows, sessionOn, studentScope, swings } from "../academy-fixture";
import { openFilledAcademy } from "../filled-academy";
import { LATEST, load, measure, newcomer, planOf, scope, undoing } from "../undone-fixture";

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

  test("a form about one of its sessions that isn't saved yet has a session to be saved to", async () => {
    for (const [form, kind] of [
      ["correct-form", "built-on"],
      ["dropped correct-form", "undone"],
    ] as const) {
      const db = await openFilledAcademy();
      const { batchId } = load(db, file("Ferdi"));
      const session = db.sqlite
        .prepare<[string], string>("SELECT id FROM session WHERE batch_id = ?")
        .pluck()
        .get(batchId);
      const kept = { id: "half", studentId: "s2", body: "{}", updatedAt: LATEST };
      insertDraft(db, scope, { ...kept, kind: `${form} ${session}` });
      expect(undoImport(db, scope, batchId, undoing)).toMatchObject({ kind });
    }
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
