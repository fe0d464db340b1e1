import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Database } from "@/db/client";
import { digestTables } from "@/db/digest";
import { readRecordChanges } from "@/db/read/record-changes";
import { readRecordViews } from "@/db/read/record-views";
import { readSessions } from "@/db/read/sessions";
import { readStudentNames } from "@/db/read/students";
import { deleteEndedLink } from "@/db/write/keeping";
import { mergeStudents } from "@/db/write/merge-students";
import { moveSession } from "@/db/write/move-session";
import { insertReadBack, updateReadBackDropped } from "@/db/write/read-backs";
import { updateChangeUndone } from "@/db/write/record-changes";
import { insertSession } from "@/db/write/sessions";
import { insertHeight } from "@/db/write/students";
import { manyCases } from "../../many-cases";
import { academyScope, openAcademy, revisionOf, sessionOn, studentScope } from "../academy-fixture";
import { anyStep, doStep, hourOf, listed, onFile } from "../history-fixture";
import { insertRow, openPlanted, plantedIn } from "../told-fixture";

/** Tables that hold what was measured and of whom. */
const MEASURED = [
  ...["session", "capture", "stated_capture_sd", "swing", "reading", "correction", "look_noise", "reread_item"],
  ...["height", "consent", "event", "drill_assignment", "practice", "goal_band", "asking"],
  ...["priority_choice", "film_plan", "told", "waiting"],
  ...["charge", "family_link", "family_opening", "family_request", "record_view", "retention_notice", "carried_look"],
];

const note = { who: "Coach", why: "wrong student", now: hourOf(50) };

const digest = async (db: Database) => ({
  tables: await digestTables(db, MEASURED),
  merged: db.sqlite.prepare("SELECT id, merged_into FROM student ORDER BY id").all(),
});

function enter(db: Database, studentId: string, day: string, id: string, sequence = 1): void {
  insertSession(db, studentScope(studentId), sessionOn(day, { sequence }), {
    now: hourOf(0),
    newId: () => id,
    batchId: null,
  });
}

describe("a change of the record and its undoing", () => {
  test(`leave every measured row as it was, whatever was done before (${manyCases(100)} histories)`, async () => {
    let undone = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.array(anyStep, { minLength: 3, maxLength: 10 }),
        anyStep.filter(({ what }) => ["facts", "move", "split", "merge"].includes(what)),
        async (steps, last) => {
          const db = await openPlanted(["s1", "s2"]);
          insertHeight(db, studentScope("s1"), { day: "2031-01-05", cm: 140 });
          insertHeight(db, studentScope("s2"), { day: "2031-01-05", cm: 141 });
          insertHeight(db, studentScope("s2"), { day: "2031-01-06", cm: 142 });
          steps.forEach((step, n) => void doStep(db, step, n));
          const before = await digest(db);
          doStep(db, last, 30);
          const change = [...readRecordChanges(db, studentScope("s1")), ...readRecordChanges(db, studentScope("s2"))]
            .filter((each) => each.changedAt === hourOf(30))
            .at(0);
          if (change) {
            expect(await digest(db)).not.toEqual(before);
            const outcome = updateChangeUndone(db, studentScope(change.studentId), change.id, note);
            expect(outcome.kind).toBe("undone");
            undone += 1;
          }
          expect(await digest(db)).toEqual(before);
          db.close();
        },
      ),
      { numRuns: manyCases(100), seed: 20261126 },
    );
    expect(undone).toBeGreaterThan(0.3 * manyCases(100));
  }, 120_000);

  test("both students are judged anew; it is done once, undone once, and by nobody else's record", async () => {
    const db = await openAcademy();
    enter(db, "s1", "2031-02-01", "a");
    enter(db, "s2", "2031-02-01", "b");
    const before = [revisionOf(db, "s1") ?? 0, revisionOf(db, "s2") ?? 0];
    const moved = moveSession(
      db,
      { from: studentScope("s1"), to: studentScope("s2") },
      { sessionId: "a", turned: [] },
      note,
    );
    if (moved.kind !== "moved") throw new Error(moved.kind);
    expect(readSessions(db, studentScope("s2")).map((one) => [one.id, one.sequence])).toEqual([
      ["b", 1],
      ["a", 2],
    ]);
    expect([revisionOf(db, "s1"), revisionOf(db, "s2")]).toEqual(before.map((revision) => revision + 1));
    expect(updateChangeUndone(db, studentScope("t1", "a2"), moved.changeId, note)).toEqual({ kind: "not-there" });
    expect(updateChangeUndone(db, studentScope("s2"), moved.changeId, note)).toEqual({
      kind: "undone",
      studentIds: ["s1", "s2"],
    });
    expect(updateChangeUndone(db, studentScope("s2"), moved.changeId, note)).toEqual({ kind: "undone-before" });
    expect([revisionOf(db, "s1"), revisionOf(db, "s2")]).toEqual(before.map((revision) => revision + 2));
    expect(readRecordChanges(db, studentScope("s1"))[0]).toMatchObject({ undoneBy: "Coach", undoneAt: note.now });
  });

  test("say no when values were corrected since, another session took the place, or a later change rests on it", async () => {
    const db = await openAcademy();
    const [one, two] = [studentScope("s1"), studentScope("s2")];
    enter(db, "s1", "2031-02-01", "a");
    const first = moveSession(db, { from: one, to: two }, { sessionId: "a", turned: [] }, note);
    const id = first.kind === "moved" ? first.changeId : 0;
    enter(db, "s1", "2031-02-01", "c");
    expect(updateChangeUndone(db, one, id, note)).toEqual({ kind: "built-on", by: "place" });
    const merged = mergeStudents(db, { from: two, to: one }, [], note);
    expect(updateChangeUndone(db, one, id, note)).toEqual({ kind: "built-on", by: "change" });
    doStep(db, { what: "change", student: 0, pick: 0, value: 3, day: 1 }, 52);
    const mergeId = merged.kind === "merged" ? merged.changeId : 0;
    expect(updateChangeUndone(db, one, mergeId, note)).toEqual({ kind: "built-on", by: "values" });
  });

  test("say no while films that went over are being read back: their values would reach no record", async () => {
    const db = await openAcademy();
    const [one, two] = [studentScope("s1"), studentScope("s2")];
    enter(db, "s1", "2031-02-01", "a");
    const moved = moveSession(db, { from: one, to: two }, { sessionId: "a", turned: [] }, note);
    const id = moved.kind === "moved" ? moved.changeId : 0;
    const swingId = db.sqlite.prepare<[], number>("SELECT id FROM swing WHERE session_id = 'a'").pluck().get() ?? 0;
    const drawn = {
      id: "rb1",
      fundamentalId: "setup-tilt",
      reader: "Coach",
      who: "Coach",
      drawnAt: hourOf(51),
    } as const;
    insertReadBack(db, two, { ...drawn, items: [{ swingId, filmReference: "shelf 1" }] });
    expect(updateChangeUndone(db, one, id, note)).toEqual({ kind: "built-on", by: "rereads" });
    updateReadBackDropped(db, two, "rb1", hourOf(52));
    expect(updateChangeUndone(db, one, id, note).kind).toBe("undone");
  });

  test("whoever is in charge and the family go with a merge, with what another academy said; who looked and what was announced stay", async () => {
    const db = await openPlanted(["s1", "s2"]);
    const of = (table: string): string[] =>
      db.sqlite.prepare<[], string>(`SELECT student_id FROM ${table} ORDER BY rowid`).pluck().all();
    const GO = ["charge", "family_link", "family_request", "carried_look"];
    const STAY = ["record_view", "retention_notice"];
    const merged = mergeStudents(db, { from: studentScope("s2"), to: studentScope("s1") }, [], note);
    for (const table of GO) expect([table, of(table)]).toEqual([table, ["s1", "s1"]]);
    for (const table of STAY) expect([table, of(table)]).toEqual([table, ["s1", "s2"]]);
    expect(readRecordViews(db, studentScope("s1")).map(({ who }) => who)).toEqual(
      ["s2", "s1"].map((id) => plantedIn(id, "record_view.who")),
    );
    expect(readRecordViews(db, studentScope("s1", "a2"))).toEqual([]);
    const id = merged.kind === "merged" ? merged.changeId : 0;
    expect(updateChangeUndone(db, studentScope("s1"), id, note).kind).toBe("undone");
    for (const table of [...GO, ...STAY]) expect([table, of(table)]).toEqual([table, ["s1", "s2"]]);
    expect(readRecordViews(db, studentScope("s1"))).toHaveLength(1);
  });

  test("a session that goes to another student takes along what another academy said of it", async () => {
    const db = await openPlanted(["s1", "s2"]);
    const whose = () =>
      db.sqlite.prepare<[], string>("SELECT student_id FROM carried_look WHERE session_id = 'film-s2'").pluck().get();
    const home = { from: studentScope("s2"), to: studentScope("s1") };
    const moved = moveSession(db, home, { sessionId: "film-s2", turned: [] }, note);
    expect(whose()).toBe("s1");
    updateChangeUndone(db, studentScope("s1"), moved.kind === "moved" ? moved.changeId : 0, note);
    expect(whose()).toBe("s2");
  });

  test("a merge stays while somebody has the one in charge, or the family a link or a request, since: nobody can say of which", async () => {
    const later = hourOf(55);
    const link = { id: "new", student_id: "s1", token_hash: "new", label: "", who: "", made_at: later };
    const SINCE = {
      charge: {
        ...{ id: "new", student_id: "s1", coach_id: "robin", kind: "own", from_day: "2031-03-01", who: "Owner" },
        recorded_at: later,
      },
      family_link: { ...link, expires_at: "2031-09-01T10:00:00.000Z" },
      family_request: { id: "new", student_id: "s1", kind: "erase", asked_at: later },
    };
    const SETTLED = {
      family_link: { ...SINCE.family_link, revoked_at: later, revoked_by: "Coach" },
      family_request: { ...SINCE.family_request, settled_at: later, settled_by: "Coach", answer: "done" },
    };
    for (const [rows, kind] of [
      [SINCE, "built-on"],
      [SETTLED, "undone"],
    ] as const)
      for (const [table, row] of Object.entries(rows)) {
        const db = await openPlanted(["s1", "s2"]);
        const merged = mergeStudents(db, { from: studentScope("s2"), to: studentScope("s1") }, [], note);
        insertRow(db, table, row);
        const id = merged.kind === "merged" ? merged.changeId : 0;
        expect([table, updateChangeUndone(db, studentScope("s1"), id, note).kind]).toEqual([table, kind]);
        db.close();
      }
  });

  test("a merge can be undone though a link that went over was removed since, or practice was taken back; not where it hurt", async () => {
    const PRACTICE = { id: "new", student_id: "s1", day: "2031-03-02", source: "family", who: "mother" };
    const logged = { ...PRACTICE, recorded_at: hourOf(55) };
    for (const [row, kind] of [
      [null, "undone"],
      [{ ...logged, minutes: 10, voided_at: hourOf(56) }, "undone"],
      [{ ...logged, minutes: 10 }, "built-on"],
      [{ ...logged, pain: "back", voided_at: hourOf(56) }, "built-on"],
    ] as const) {
      const db = await openPlanted(["s1", "s2"]);
      const merged = mergeStudents(db, { from: studentScope("s2"), to: studentScope("s1") }, [], note);
      deleteEndedLink(db, studentScope("s1"), "link-s2");
      if (row) insertRow(db, "practice", row);
      const id = merged.kind === "merged" ? merged.changeId : 0;
      expect(updateChangeUndone(db, studentScope("s1"), id, note).kind).toBe(kind);
      expect(db.sqlite.prepare("SELECT id FROM family_link").pluck().all()).toEqual(["link-s1"]);
      const requests = db.sqlite.prepare("SELECT student_id FROM family_request ORDER BY id").pluck().all();
      expect(requests).toEqual(["s1", kind === "undone" ? "s2" : "s1"]);
      db.close();
    }
  });

  test("a student merged into another is listed nowhere and has nothing; sessions of one place take free ones", async () => {
    const db = await openAcademy();
    for (const [studentId, id, sequence] of [
      ["s1", "a", 1],
      ["s1", "b", 3],
      ["s2", "c", 1],
      ["s2", "d", 2],
      ["s2", "e", 3],
    ] as const)
      enter(db, studentId, "2031-02-01", id, sequence);
    const merged = mergeStudents(db, { from: studentScope("s2"), to: studentScope("s1") }, [], note);
    expect(merged).toMatchObject({ kind: "merged", sessions: 3 });
    expect(listed(db)).toEqual(["s1"]);
    expect(onFile(db, "s2")).toMatchObject({ sessions: [], readings: [] });
    // A file that still calls the one by its alias means the other.
    const names = readStudentNames(db, academyScope()).map(({ alias, id }) => [alias, id]);
    expect(names).toEqual([
      ["Ulla", "s1"],
      ["Ferdi", "s1"],
    ]);
    const sequences = readSessions(db, studentScope("s1")).map((one) => one.sequence);
    expect(new Set(sequences).size).toBe(5);
    expect(mergeStudents(db, { from: studentScope("s2"), to: studentScope("s1") }, [], note).kind).toBe(
      "merged-before",
    );
  });
});
