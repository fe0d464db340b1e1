import fc from "fast-check";
import { expect, test } from "vitest";
import { digestTables } from "@/db/digest";
import { readAssignmentLog, readAssignments, readDrills } from "@/db/read/drills";
import { readEvents } from "@/db/read/events";
import { readOwnFundamentals } from "@/db/read/own-fundamentals";
import { insertAssignment, insertDrill, updateAssignmentEnd, updateAssignmentTakenBack } from "@/db/write/drills";
import { insertEvent } from "@/db/write/events";
import { insertOwnFundamental } from "@/db/write/own-fundamentals";
import { academyScope, NOW, openAcademy, revisionOf, studentScope } from "../academy-fixture";

const wall = { id: "d1", name: "Wall", fundamentalId: "hinge", how: "Slowly.", cautions: "Not with a sore wrist." };
const given = { id: "g1", drillId: "d1", fundamentalId: "hinge", start: "2031-02-02", end: null, dose: "20 a day" };

test("drills come by name; one given to a student bears its name and marks the data as changed", async () => {
  const db = await openAcademy();
  insertDrill(db, academyScope(), wall);
  insertDrill(db, academyScope(), { ...wall, id: "d2", name: "Gate" });
  expect(readDrills(db, academyScope()).map((drill) => drill.name)).toEqual(["Gate", "Wall"]);
  expect(readDrills(db, academyScope())[1]).toEqual({
    ...wall,
    ...{
      dose: "",
      reps: null,
      minutesADay: null,
      daysAWeek: null,
      remeasureDays: null,
      retiredOn: null,
      earlier: "[]",
    },
  });
  const usual = { dose: "slowly", reps: 20, minutesADay: 12, daysAWeek: 4, remeasureDays: 14 };
  insertDrill(db, academyScope(), { ...wall, id: "d3", name: "Zip", ...usual });
  expect(readDrills(db, academyScope())[2]).toMatchObject(usual);
  expect(insertAssignment(db, studentScope(), given)).toEqual({ kind: "inserted" });
  insertAssignment(db, studentScope(), { ...given, id: "g2", drillId: "d2", start: "2031-01-02", end: "2031-01-09" });
  expect(readAssignments(db, studentScope())).toMatchObject([
    { drill: "Gate", end: "2031-01-09" },
    { ...given, drill: "Wall" },
  ]);
  expect([readAssignments(db, studentScope("s2")).length, revisionOf(db)]).toEqual([0, 2]);
});

test("a drill of another academy's library can't be given", async () => {
  const db = await openAcademy();
  insertDrill(db, academyScope("a2"), wall);
  expect(insertAssignment(db, studentScope(), given)).toEqual({ kind: "unknown-drill", drillId: "d1" });
  expect([readDrills(db, academyScope()).length, revisionOf(db)]).toEqual([0, 0]);
});

test("events come by day with the fundamentals that they begin anew", async () => {
  const db = await openAcademy();
  const growth = {
    id: "e1",
    kind: "growth",
    day: "2031-02-02",
    note: "3 cm",
    rebaselines: ["hinge", "own-river"],
  } as const;
  insertEvent(db, studentScope(), growth);
  insertEvent(db, studentScope(), { id: "e2", kind: "break", day: "2031-01-02", note: "", rebaselines: [] });
  expect(readEvents(db, studentScope()).map((event) => [event.id, event.rebaselines])).toEqual([
    ["e2", []],
    ["e1", ["hinge", "own-river"]],
  ]);
  expect(readEvents(db, studentScope())[1]).toEqual({ ...growth, endDay: null, place: null });
  const broken = { ...growth, id: "e3", rebaselines: ["hinge,grip"] };
  expect(() => insertEvent(db, studentScope(), broken)).toThrow("not a short word");
  expect([readEvents(db, studentScope()).length, revisionOf(db)]).toEqual([2, 2]);
});

test("an own fundamental is written once; its definition comes back letter by letter", async () => {
  const db = await openAcademy();
  const river = { id: "own-river", definition: '{ "unit":"deg" }' };
  expect(insertOwnFundamental(db, academyScope(), river, NOW)).toEqual({ kind: "inserted" });
  expect(insertOwnFundamental(db, academyScope(), { ...river, definition: "{}" }, NOW)).toEqual({ kind: "exists" });
  expect(insertOwnFundamental(db, academyScope("a2"), river, NOW)).toEqual({ kind: "inserted" });
  expect(readOwnFundamentals(db, academyScope())).toEqual([river]);
});

test("a drill is stopped once, on a day that isn't before its first, with a reason", async () => {
  const db = await openAcademy();
  insertDrill(db, academyScope(), wall);
  insertAssignment(db, studentScope(), given, { who: "Coach", now: NOW });
  const stop = (end: string, scope = studentScope()) =>
    updateAssignmentEnd(db, scope, { assignmentId: "g1", end, why: "it is learned" }).kind;
  expect([stop("2031-02-01"), stop("2031-03-01", studentScope("s2")), stop("2031-03-01"), stop("2031-03-02")]).toEqual([
    ...["unchanged", "unchanged", "updated", "unchanged"],
  ]);
  expect(readAssignmentLog(db, studentScope())).toEqual([
    {
      ...{ ...given, drill: "Wall", end: "2031-03-01", endWhy: "it is learned" },
      ...{ who: "Coach", recordedAt: NOW, state: "stands" },
      ...{ reps: null, minutesADay: null, daysAWeek: null, stopRule: "", remeasureOn: null },
    },
  ]);
});

test("taken back a drill is in the list alone; put back in any order, the table holds what it held", async () => {
  const db = await openAcademy();
  insertDrill(db, academyScope(), wall);
  insertAssignment(db, studentScope(), given);
  insertAssignment(db, studentScope(), { ...given, id: "g2" });
  updateAssignmentEnd(db, studentScope(), { assignmentId: "g2", end: "2031-03-01", why: "rest" });
  const before = [await digestTables(db, ["drill_assignment"]), readAssignmentLog(db, studentScope())];
  await fc.assert(
    fc.asyncProperty(fc.array(fc.constantFrom("g1", "g2", "g3"), { maxLength: 9 }), async (taken) => {
      for (const assignmentId of taken)
        updateAssignmentTakenBack(db, studentScope(), { assignmentId, wish: "take", now: NOW });
      const standing = ["g1", "g2"].filter((id) => !taken.some((each) => each === id));
      expect(readAssignments(db, studentScope()).map(({ id }) => id)).toEqual(standing);
      expect(readAssignmentLog(db, studentScope()).map(({ end }) => end)).toEqual([null, "2031-03-01"]);
      for (const assignmentId of taken)
        updateAssignmentTakenBack(db, studentScope(), { assignmentId, wish: "put", now: NOW });
      expect([await digestTables(db, ["drill_assignment"]), readAssignmentLog(db, studentScope())]).toEqual(before);
    }),
    { numRuns: 60, seed: 15 },
  );
});
