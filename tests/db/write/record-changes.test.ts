import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Database } from "@/db/client";
import { digestTables } from "@/db/digest";
import { readRecordChanges } from "@/db/read/record-changes";
import { readSessions } from "@/db/read/sessions";
import { readStudentNames } from "@/db/read/students";
import { mergeStudents } from "@/db/write/merge-students";
import { moveSession } from "@/db/write/move-session";
import { insertReadBack, updateReadBackDropped } from "@/db/write/read-backs";
import { updateChangeUndone } from "@/db/write/record-changes";
import { insertSession } from "@/db/write/sessions";
import { insertHeight } from "@/db/write/students";
import { manyCases } from "../../many-cases";
import { academyScope, openAcademy, revisionOf, sessionOn, studentScope } from "../academy-fixture";
import { anyStep, doStep, hourOf, listed, onFile } from "../history-fixture";

/** Tables that hold what was measured and of whom. */
const MEASURED = [
  ...["session", "capture", "stated_capture_sd", "swing", "reading", "correction", "look_noise", "reread_item"],
  ...["height", "consent", "event", "drill_assignment", "practice", "goal_band", "asking"],
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
          const db = await openAcademy();
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
