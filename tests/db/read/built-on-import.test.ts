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
import { insertPerson } from "@/db/write/people";
import { insertCorrection, insertReadings } from "@/db/write/readings";
import { insertRereadDraw } from "@/db/write/rereads";
import { insertSession } from "@/db/write/sessions";
import { insertConsent, insertHeight, updateConsentWithdrawn } from "@/db/write/students";
import { undoImport } from "@/db/write/undo-import";
import { countingStamp, countRows, sessionOn, studentScope, swings } from "../academy-fixture";
import { fairRows } from "../fair-rows";
import { openFilledAcademy } from "../filled-academy";
import { insertRow } from "../told-fixture";
import { LATEST, load, measure, newcomer, planOf, scope, undoing } from "../undone-fixture";

const PLANNED = { club_group: "iron", who: "Owner", recorded_at: LATEST };
const PRIORITY = { ...PLANNED, reason: "grip", day: "2031-03-03" };
const TOLD = { ...PLANNED, id: "t9", kind: "message", text: "", findings: "[]", day: "2031-03-03" };
const WAITING = { id: "w9", fundamental_id: "hinge", from_day: "2031-03-03", who: "", recorded_at: LATEST };
const FILM_PLAN = { ...PLANNED, id: "fp9", made_on: "2031-03-03", due_on: "2031-03-10", body: "{}" };
const CHARGE = {
  ...{ id: "c9", coach_id: "robin", kind: "own", from_day: "2031-03-03", who: "Owner", recorded_at: LATEST },
};
const LINK = {
  ...{ id: "l9", token_hash: "l9", label: "phone", who: "Coach", made_at: LATEST },
  expires_at: "2031-09-01T10:00:00.000Z",
};
const REQUEST = { id: "r9", kind: "export", asked_at: LATEST };

function addRobin(db: Database): void {
  insertRow(db, "user", { id: "robin", name: "Robin", email: "robin@x.example", created_at: 1, updated_at: 1 });
  insertPerson(db, {
    userId: "robin",
    academyId: "a1",
    roles: ["coach"],
    assists: [],
    addedAt: LATEST,
    addedBy: "Owner",
  });
}

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
    const asked = { fundamentalId: "hinge", clubGroup: "iron", state: "stopped", day: "2031-03-03" } as const;
    insertAsking(db, studentScope(student), { ...asked, who: "Owner", plan: null }, LATEST);
  },
  priority: (db, { student }) => insertRow(db, "priority_choice", { ...PRIORITY, student_id: student }),
  "film-plan": (db, { student }) => insertRow(db, "film_plan", { ...FILM_PLAN, student_id: student }),
  "fair-allocation": (db, { student }) => {
    for (const row of fairRows(student, { academyId: "a1", who: "Owner", at: LATEST })) insertRow(db, ...row);
  },
  told: (db, { student }) => insertRow(db, "told", { ...TOLD, student_id: student }),
  waiting: (db, { student }) => insertRow(db, "waiting", { ...WAITING, student_id: student }),
  drill: (db, { student }) => {
    const given = { id: "g9", drillId: "d1", fundamentalId: "hinge", start: "2031-03-03", end: null } as const;
    insertAssignment(db, studentScope(student), { ...given, dose: "20" });
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
  charge: (db, { student }) => {
    addRobin(db);
    insertRow(db, "charge", { ...CHARGE, student_id: student, from_coach_id: "robin" });
  },
  "family-link": (db, { student }) => insertRow(db, "family_link", { ...LINK, student_id: student }),
  "family-request": (db, { student }) => insertRow(db, "family_request", { ...REQUEST, student_id: student }),
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

  test("a consent that it brought keeps its withdrawal, whatever day that is of", async () => {
    for (const withdrawnOn of ["2030-12-01", "2031-03-01", "2031-03-03"]) {
      const db = await openFilledAcademy();
      const { batchId } = load(db, file("Ferdi"), "b", ["s2"]);
      const consentId =
        db.sqlite.prepare<[string], string>("SELECT id FROM consent WHERE batch_id = ?").pluck().get(batchId) ?? "";
      updateConsentWithdrawn(db, studentScope("s2"), { consentId, withdrawnOn });
      const built = [{ kind: "consent", alias: "Ferdi", count: 1 }];
      expect(undoImport(db, scope, batchId, undoing)).toMatchObject({ kind: "built-on", built });
    }
  });

  test("a first charge, a link that was ended, a settled request, and who looked go along with a student whom it added", async () => {
    const db = await openFilledAcademy();
    const { batchId } = load(db, file("Nino"));
    const nino = db.sqlite.prepare<[], string>("SELECT id FROM student WHERE alias = 'Nino'").pluck().get() ?? "";
    addRobin(db);
    const tables = ["charge", "family_link", "family_request", "record_view"];
    const before = tables.map((table) => countRows(db, table));
    const of = { student_id: nino };
    insertRow(db, "charge", { ...CHARGE, ...of });
    insertRow(db, "family_link", { ...LINK, ...of, revoked_at: LATEST, revoked_by: "Coach" });
    insertRow(db, "family_request", { ...REQUEST, ...of, settled_at: LATEST, settled_by: "Coach" });
    insertRow(db, "record_view", { ...of, who: "Robin", role: "coach", what: "page", place: "x", viewed_at: LATEST });
    expect(undoImport(db, scope, batchId, undoing)).toMatchObject({ kind: "undone", students: 1 });
    expect(tables.map((table) => countRows(db, table))).toEqual(before);
  });

  test("of students whom the viewer may not see it says that something was built, and neither what, who nor when", async () => {
    const db = await openFilledAcademy();
    const sessions = ["Ferdi", "Ulla"].map((alias) => [alias, sessionOn("2031-02-01")] as const);
    const { batchId } = load(db, planOf(sessions));
    for (const student of ["s1", "s2"]) {
      const session = db.sqlite
        .prepare<[string, string], string>("SELECT id FROM session WHERE batch_id = ? AND student_id = ?")
        .pluck()
        .get(batchId, student);
      ACTS.correction?.(db, { session: session ?? "", student });
      if (student === "s1") ACTS.change?.(db, { session: session ?? "", student });
    }
    const batch = readImportBatchById(db, scope, batchId);
    const mine = { ...scope, students: ["s2"] } as unknown as typeof scope;
    const built = batch ? readBuiltOnImport(db, mine, batch) : [];
    expect(built).toEqual([
      expect.objectContaining({ kind: "correction", studentId: "s2", alias: "Ferdi", count: 1, day: "2031-02-01" }),
      { kind: "unseen", count: 1, studentId: null, alias: null, sessionId: null, day: null },
    ]);
    expect(JSON.stringify(built)).not.toContain("Ulla");
    expect(undoImport(db, mine, batchId, undoing).kind).toBe("built-on");
  });
});
