import { expect, test } from "vitest";
import { readDrilledStudents, readWaitingStudents } from "@/db/read/recorded";
import { insertAssignment, insertDrill, updateAssignmentTakenBack } from "@/db/write/drills";
import { insertWaiting } from "@/db/write/waiting";
import { academyScope, NOW, openAcademy, studentScope } from "../academy-fixture";

const given = { id: "g1", drillId: "d1", fundamentalId: "hinge", start: "2031-02-02", end: "2031-02-20", dose: "" };
const DRILL = { id: "d1", name: "Wall", fundamentalId: "hinge", how: "Slowly.", cautions: "" };

test("whoever is on a drill on any day of a stretch, as long as it wasn't taken back", async () => {
  const db = await openAcademy();
  insertDrill(db, academyScope(), DRILL);
  insertAssignment(db, studentScope(), given);
  const drilled = (from: string, to: string) => [...readDrilledStudents(db, academyScope(), { from, to })];
  expect(drilled("2031-01-01", "2031-02-01")).toEqual([]);
  expect(drilled("2031-01-01", "2031-02-02")).toEqual(["s1"]);
  expect(drilled("2031-02-20", "2031-05-01")).toEqual(["s1"]);
  expect(drilled("2031-02-21", "2031-05-01")).toEqual([]);
  updateAssignmentTakenBack(db, studentScope(), { assignmentId: "g1", wish: "take", now: NOW });
  expect(drilled("2031-02-02", "2031-02-20")).toEqual([]);
  insertAssignment(db, studentScope(), { ...given, id: "g2", end: null });
  expect(drilled("2040-01-01", "2040-02-01")).toEqual(["s1"]);
});

test("whoever is left without a drill on purpose, and of both only whom the viewer may see", async () => {
  const db = await openAcademy();
  insertDrill(db, academyScope(), DRILL);
  insertAssignment(db, studentScope(), given);
  insertWaiting(db, studentScope("s2"), {
    ...{ id: "w1", fundamentalId: "hinge", fromDay: "2031-02-02", who: "Wren", recordedAt: NOW },
  });
  const stretch = { from: "2031-02-01", to: "2031-03-01" };
  expect([...readWaitingStudents(db, academyScope(), stretch)]).toEqual(["s2"]);
  const cut = { ...academyScope(), students: ["s2"] } as unknown as ReturnType<typeof academyScope>;
  expect([[...readDrilledStudents(db, cut, stretch)], [...readWaitingStudents(db, cut, stretch)]]).toEqual([
    [],
    ["s2"],
  ]);
});
