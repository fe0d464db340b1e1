import { expect, test } from "vitest";
import { readDrillUse } from "@/db/read/drill-use";
import { readDrillsDue } from "@/db/read/drills-due";
import { insertAssignment, insertDrill, updateAssignmentTakenBack } from "@/db/write/drills";
import { insertSession } from "@/db/write/sessions";
import { updateDeparted } from "@/db/write/students";
import type { AcademyScope } from "@/lib/domain/scope";
import { academyScope, countingStamp, NOW, openAcademy, sessionOn, studentScope } from "../academy-fixture";

const wall = { id: "d1", name: "Wall", fundamentalId: "hinge", how: "Slowly.", cautions: "" };
const given = { drillId: "d1", fundamentalId: "hinge", start: "2031-01-02", end: null, dose: "" };

async function started() {
  const db = await openAcademy();
  insertDrill(db, academyScope(), wall);
  insertDrill(db, academyScope(), { ...wall, id: "d2", name: "Gate" });
  const give = (studentId: string, id: string, facts: Partial<typeof given & { remeasureOn: string; reps: number }>) =>
    insertAssignment(db, studentScope(studentId), { ...given, id, ...facts });
  give("s1", "later", { remeasureOn: "2031-01-24" });
  give("s1", "today", { remeasureOn: "2031-01-23" });
  give("s2", "before", { remeasureOn: "2031-01-20", drillId: "d2" });
  give("s2", "never", {});
  give("s2", "back", { remeasureOn: "2031-01-01" });
  updateAssignmentTakenBack(db, studentScope("s2"), { assignmentId: "back", wish: "take", now: NOW });
  insertAssignment(db, studentScope("s2"), { ...given, id: "over", end: "2031-01-10", remeasureOn: "2031-01-05" });
  return db;
}

const due = (db: Awaited<ReturnType<typeof started>>, scope: AcademyScope = academyScope(), today = "2031-01-23") =>
  readDrillsDue(db, scope, today).map(({ assignmentId }) => assignmentId);

test("due are drills that run and whose day has come, those that wait longest first; ended and undone ones aren't", async () => {
  const db = await started();
  expect(due(db)).toEqual(["before", "today"]);
  expect(due(db, academyScope(), "2031-01-24")).toEqual(["before", "today", "later"]);
  expect(due(db, academyScope("a2"))).toEqual([]);
  expect(due(db, { ...academyScope(), students: ["s1"] } as AcademyScope)).toEqual(["today"]);
  expect(readDrillsDue(db, academyScope(), "2031-01-23")[0]).toMatchObject({
    ...{ drill: "Gate", fundamentalId: "hinge", start: "2031-01-02", remeasureOn: "2031-01-20", filmedOn: null },
  });
});

test("says when a film came since that day, and asks nothing of a student who has left", async () => {
  const db = await started();
  for (const day of ["2031-01-19", "2031-01-21", "2031-01-25"])
    insertSession(db, studentScope("s2"), sessionOn(day), { ...countingStamp(day), batchId: null });
  expect(readDrillsDue(db, academyScope(), "2031-01-23")[0]?.filmedOn).toBe("2031-01-21");
  updateDeparted(db, studentScope("s2"), "2031-01-22");
  expect(due(db)).toEqual(["today"]);
});

test("how drills were last given: one row a drill, the latest first, what was undone left out, only of whom one may see", async () => {
  const db = await started();
  insertAssignment(db, studentScope("s2"), { ...given, id: "new", start: "2031-01-15", reps: 30 });
  expect(readDrillUse(db, academyScope()).map(({ drillId, start, reps }) => [drillId, start, reps])).toEqual([
    ["d1", "2031-01-15", 30],
    ["d2", "2031-01-02", null],
  ]);
  const one = { ...academyScope(), students: ["s1"] } as AcademyScope;
  expect(readDrillUse(db, one).map(({ drillId, start }) => [drillId, start])).toEqual([["d1", "2031-01-02"]]);
  expect(readDrillUse(db, { ...academyScope(), students: [] } as AcademyScope)).toEqual([]);
});
