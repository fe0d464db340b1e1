import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type KnownThen, readKnownThen } from "@/db/read/known";
import { readRecordChanges } from "@/db/read/record-changes";
import { insertEvent } from "@/db/write/events";
import { updateChangeUndone } from "@/db/write/record-changes";
import { manyCases } from "../../many-cases";
import { openAcademy, studentScope } from "../academy-fixture";
import { anyStep, doStep, hourOf, onFile, STUDENTS, strayReadings } from "../history-fixture";

describe("what was known then", () => {
  test(`is what a database holds that has only what was done up to then, for any history of entries, corrections, moves, splits, merges and undoings (${manyCases(100)} histories)`, async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anyStep, { minLength: 4, maxLength: 14 }), async (steps) => {
        const db = await openAcademy();
        const held: KnownThen[][] = [];
        steps.forEach((step, n) => {
          doStep(db, step, n);
          held.push(STUDENTS.map((id) => onFile(db, id)));
          expect(strayReadings(db), `after step ${n}`).toBe(0);
        });
        held.forEach((then, n) => {
          STUDENTS.forEach((id, at) => {
            expect(readKnownThen(db, studentScope(id), hourOf(n)), `after step ${n} of ${id}`).toEqual(then[at]);
          });
        });
        db.close();
      }),
      { numRuns: manyCases(100), seed: 20261126 },
    );
  }, 120_000);

  test("a split can't be undone once the session that it was taken from has moved on", async () => {
    const db = await openAcademy();
    const one = { pick: 0, value: null, day: 1, student: 1 } as const;
    for (const [n, what] of (["enter", "split", "move"] as const).entries()) doStep(db, { ...one, what }, n);
    const split = readRecordChanges(db, studentScope("s2"))[0]?.id ?? 0;
    const note = { who: "Coach", now: hourOf(9) };
    expect(updateChangeUndone(db, studentScope("s2"), split, note)).toEqual({ kind: "built-on", by: "change" });
    expect(strayReadings(db)).toBe(0);
  });

  test("holds an event as it stood, and what began anew with it then", async () => {
    const db = await openAcademy();
    insertEvent(db, studentScope(), { id: "e", kind: "growth", day: "2031-02-01", note: "", rebaselines: ["hinge"] });
    db.sqlite.exec(`UPDATE event SET recorded_at = '${hourOf(2)}', rebaselines = ''`);
    db.sqlite.exec(
      `INSERT INTO rebaseline_change (event_id, before, after, who, why, changed_at)
       VALUES ('e', 'hinge', '', 'Coach', 'no', '${hourOf(4)}')`,
    );
    const anew = (n: number) => readKnownThen(db, studentScope(), hourOf(n)).events.map((event) => event.rebaselines);
    expect(anew(1)).toEqual([]);
    expect(anew(3)).toEqual([["hinge"]]);
    expect(anew(5)).toEqual([[]]);
    db.sqlite.exec(`UPDATE event SET voided_at = '${hourOf(6)}'`);
    expect([anew(5), anew(6)]).toEqual([[[]], []]);
  });

  test("writes nothing", async () => {
    const db = await openAcademy();
    doStep(db, { what: "enter", student: 0, pick: 0, value: 1, day: 1 }, 0);
    doStep(db, { what: "move", student: 0, pick: 0, value: 1, day: 1 }, 1);
    const changes = db.sqlite.prepare<[], number>("SELECT total_changes()").pluck();
    const before = changes.get();
    expect(readKnownThen(db, studentScope(), hourOf(0)).sessions).toHaveLength(1);
    expect(changes.get()).toBe(before);
  });
});
