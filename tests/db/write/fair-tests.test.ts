import { expect, test } from "vitest";
import { readFairAllocations, readFairSteps, readFairTests, readFairValues } from "@/db/read/fair-tests";
import { ROWS_OF_STUDENT } from "@/db/read/student-rows";
import { insertDrill } from "@/db/write/drills";
import { insertFairAllocation, insertFairStep, insertFairTest } from "@/db/write/fair-tests";
import type { FairFigures, FairTest } from "@/lib/domain/fair-test";
import { academyScope, NOW, openAcademy, studentScope } from "../academy-fixture";

const TEST: FairTest = {
  ...{ id: "t1", fundamentalId: "hinge", firstDrillId: "d1", secondDrillId: "d2", least: 4, spread: 5, students: 2 },
  ...{ looks: 2, days: 42, seed: "ab", day: "2031-01-04", who: "Owner", recordedAt: NOW },
};
const FIGURES: FairFigures = {
  ...{ says: "open", fraction: 0.5, estimate: 1, low: null, high: 3, p: 0.4, orders: 20, counted: "all" },
  ...{ have: [2, 3], missing: 0, version: "v" },
};
const by = { day: "2031-02-01", who: "Owner", recordedAt: NOW };
const draw = (id: string, coachId = "u1") => ({ id, clubGroup: "iron", coachId, ...by }) as const;

async function opened() {
  const db = await openAcademy();
  for (const id of ["d1", "d2"])
    insertDrill(db, academyScope(), { id, name: id, fundamentalId: "hinge", how: "", cautions: "" });
  expect(insertFairTest(db, academyScope(), TEST).kind).toBe("inserted");
  return db;
}

test("a test is kept as it was planned; with a drill that the library lacks nothing is written", async () => {
  const db = await opened();
  expect(readFairTests(db, academyScope())).toEqual([TEST]);
  expect(insertFairTest(db, academyScope(), { ...TEST, id: "t2", secondDrillId: "d9" }).kind).toBe("unknown-drill");
  expect(readFairTests(db, academyScope())).toHaveLength(1);
  db.close();
});

test("each draw takes the next place of its coach's order, once a student, until all are drawn", async () => {
  const db = await opened();
  const armAt = (place: number) => (place % 2 === 0 ? 1 : 0) as 0 | 1;
  const first = insertFairAllocation(db, studentScope("s1"), TEST, draw("a"), armAt);
  expect(first).toMatchObject({ kind: "drawn", draw: { place: 0, arm: 1, studentId: "s1" } });
  expect(insertFairAllocation(db, studentScope("s1"), TEST, draw("b"), armAt).kind).toBe("drawn-before");
  expect(insertFairAllocation(db, studentScope("s2"), TEST, draw("c"), armAt)).toMatchObject({
    draw: { place: 1, arm: 0 },
  });
  expect(insertFairAllocation(db, studentScope("s3"), TEST, draw("d"), armAt).kind).toBe("over");
  expect(readFairAllocations(db, TEST).map(({ id, place }) => [id, place])).toEqual([
    ["a", 0],
    ["c", 1],
  ]);
  db.close();
});

test("another coach's order begins at its own first place", async () => {
  const db = await opened();
  insertFairAllocation(db, studentScope("s1"), TEST, draw("a"), () => 0);
  expect(insertFairAllocation(db, studentScope("s2"), TEST, draw("b", "u2"), () => 0)).toMatchObject({
    draw: { place: 0 },
  });
  db.close();
});

test("looks and the end follow one another; after the end nothing is drawn or looked at", async () => {
  const db = await opened();
  insertFairAllocation(db, studentScope("s1"), TEST, draw("a"), () => 0);
  const look = { number: 1, kind: "look", figures: FIGURES, why: "", ...by } as const;
  expect(insertFairStep(db, academyScope(), TEST, look, [{ allocationId: "a", look: 0, value: 2.5 }]).kind).toBe(
    "inserted",
  );
  expect(insertFairStep(db, academyScope(), TEST, look, []).kind).toBe("over");
  expect(readFairValues(db, TEST)).toEqual([{ allocationId: "a", look: 0, value: 2.5 }]);
  const end = { number: 2, kind: "end", figures: null, why: "no time", ...by } as const;
  expect(insertFairStep(db, academyScope(), TEST, end, []).kind).toBe("inserted");
  expect(readFairSteps(db, TEST)).toEqual([look, end]);
  expect(insertFairAllocation(db, studentScope("s2"), TEST, draw("b"), () => 0).kind).toBe("over");
  expect(insertFairStep(db, academyScope(), TEST, { ...end, number: 3 }, []).kind).toBe("over");
  db.close();
});

test("with a student the draw and what it was found to be worth go; what was said of many stays", async () => {
  const db = await opened();
  insertFairAllocation(db, studentScope("s1"), TEST, draw("a"), () => 0);
  const look = { number: 1, kind: "look", figures: FIGURES, why: "", ...by } as const;
  insertFairStep(db, academyScope(), TEST, look, [{ allocationId: "a", look: 0, value: 2.5 }]);
  for (const table of ["fair_value", "fair_allocation"] as const)
    db.sqlite.prepare(`DELETE FROM ${table} WHERE ${ROWS_OF_STUDENT[table]}`).run({ ids: JSON.stringify(["s1"]) });
  expect([readFairAllocations(db, TEST), readFairValues(db, TEST)]).toEqual([[], []]);
  expect(readFairSteps(db, TEST)).toHaveLength(1);
  db.close();
});
