import { expect, test } from "vitest";
import {
  readCurrentAnalyses,
  readCurrentLines,
  readCurrentSummaries,
  readStaleStudents,
} from "@/db/read/current-analyses";
import { insertAnalysis } from "@/db/write/analyses";
import { insertSession } from "@/db/write/sessions";
import { insertHeight } from "@/db/write/students";
import { academyScope, countingStamp, openAcademy, sessionOn, studentScope } from "../academy-fixture";

const made = {
  fundamentalId: "hinge",
  clubGroup: "iron",
  asOf: "2031-02-01",
  policyVersion: "p1",
  noiseModel: "m1",
  summary: "small",
  body: "whole",
};

test("an analysis is current while the student's data are those that it rests on; then the student is stale", async () => {
  const db = await openAcademy();
  const [scope, stamp] = [academyScope(), { ...countingStamp(), batchId: null }];
  const film = (id: string) => insertSession(db, studentScope(id), sessionOn("2031-02-01"), stamp);
  film("s1");
  expect(readStaleStudents(db, scope, "p1")).toEqual(["s1"]);
  insertAnalysis(db, studentScope(), { ...made, dataRevision: 1 });
  insertAnalysis(db, studentScope("t1", "a2"), { ...made, dataRevision: 0 });
  const key = { studentId: "s1", fundamentalId: "hinge", clubGroup: "iron", dataRevision: 1, noiseModel: "m1" };
  expect(readCurrentLines(db, scope, "p1")).toEqual([{ studentId: "s1", lines: "s1 hinge iron 1 m1\n" }]);
  expect(readCurrentSummaries(db, scope, "p1")).toEqual([{ ...key, summary: "small" }]);
  expect(readCurrentAnalyses(db, studentScope(), "p1")).toEqual([{ ...key, body: "whole" }]);
  expect([readStaleStudents(db, scope, "p1"), readStaleStudents(db, scope, "p2")]).toEqual([[], ["s1"]]);
  insertHeight(db, studentScope(), { day: "2031-02-02", cm: 150 });
  expect([readCurrentLines(db, scope, "p1"), readCurrentAnalyses(db, studentScope(), "p1")]).toEqual([[], []]);
  expect(readStaleStudents(db, scope, "p1")).toEqual(["s1"]);
});
