import { expect, test } from "vitest";
import { readDrillDecisions } from "@/db/read/drill-decisions";
import { readAssignmentLog } from "@/db/read/drills";
import { insertDrillDecision, type NewDecision } from "@/db/write/drill-decisions";
import { insertAssignment, insertDrill, updateAssignmentTakenBack } from "@/db/write/drills";
import { academyScope, NOW, openAcademy, studentScope } from "../academy-fixture";

const wall = { id: "d1", name: "Wall", fundamentalId: "hinge", how: "Slowly.", cautions: "" };
const given = { id: "g1", drillId: "d1", fundamentalId: "hinge", start: "2031-01-02", end: null, dose: "daily" };
const asked = { reps: 20, daysAWeek: 5, stopRule: "it is easy", remeasureOn: "2031-01-23" };
const decided: NewDecision = {
  ...{ assignmentId: "g1", decision: "keep", why: "half way", day: "2031-01-23", who: "Owner", recordedAt: NOW },
  next: "2031-02-13",
};

async function started() {
  const db = await openAcademy();
  insertDrill(db, academyScope(), wall);
  insertAssignment(db, studentScope(), { ...given, ...asked });
  return db;
}

test("a drill that goes on gets its next day, and the one that stood is kept with the decision", async () => {
  const db = await started();
  expect(insertDrillDecision(db, studentScope(), decided)).toBe("recorded");
  const goal: NewDecision = { ...decided, decision: "change-goal", day: "2031-02-13", next: "2031-03-06" };
  expect(insertDrillDecision(db, studentScope(), goal)).toBe("recorded");
  expect(readAssignmentLog(db, studentScope())[0]).toMatchObject({ ...asked, remeasureOn: "2031-03-06", end: null });
  expect(readDrillDecisions(db, studentScope()).map((each) => [each.decision, each.remeasureWas])).toEqual([
    ["keep", "2031-01-23"],
    ["change-goal", "2031-02-13"],
  ]);
  expect(readDrillDecisions(db, studentScope("s2"))).toEqual([]);
});

test.each(["stop", "change-drill"] as const)(
  "%s ends it with the decision's day and reason, and it is over",
  async (decision) => {
    const db = await started();
    const end: NewDecision = { ...decided, decision, next: null };
    expect(insertDrillDecision(db, studentScope(), end)).toBe("recorded");
    expect(readAssignmentLog(db, studentScope())[0]).toMatchObject({
      ...{ end: "2031-01-23", endWhy: "half way", remeasureOn: "2031-01-23" },
    });
    expect(insertDrillDecision(db, studentScope(), decided)).toBe("unchanged");
    expect(readDrillDecisions(db, studentScope())).toHaveLength(1);
  },
);

test("nothing is decided about another student's drill, one taken back, or one that begins later", async () => {
  const db = await started();
  expect(insertDrillDecision(db, studentScope("s2"), decided)).toBe("unchanged");
  expect(insertDrillDecision(db, studentScope(), { ...decided, day: "2031-01-01" })).toBe("unchanged");
  updateAssignmentTakenBack(db, studentScope(), { assignmentId: "g1", wish: "take", now: NOW });
  expect(insertDrillDecision(db, studentScope(), decided)).toBe("unchanged");
  expect([readDrillDecisions(db, studentScope()), readDrillDecisions(db, studentScope("s2"))]).toEqual([[], []]);
});

test("what was known at an instant leaves out decisions that were entered later", async () => {
  const db = await started();
  insertDrillDecision(db, studentScope(), { ...decided, recordedAt: "2031-01-23T10:00:00.000Z" });
  const known = (at: string) => readDrillDecisions(db, studentScope(), at).length;
  expect([known("2031-01-23T09:59:59.999Z"), known("2031-01-23T10:00:00.000Z")]).toEqual([0, 1]);
});
