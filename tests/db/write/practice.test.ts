import fc from "fast-check";
import { expect, test } from "vitest";
import { digestTables } from "@/db/digest";
import { readPractice } from "@/db/read/practice";
import { insertAssignment, insertDrill } from "@/db/write/drills";
import { insertPractice, type NewPractice, updatePracticeVoided } from "@/db/write/practice";
import { academyScope, NOW, openAcademy, revisionOf, studentScope } from "../academy-fixture";

const first: NewPractice = {
  ...{ id: "p1", day: "2031-02-03", assignmentId: null, minutes: 15, balls: null, felt: "easy", source: "told" },
  ...{ who: "Coach", recordedAt: NOW },
};

test("practice is kept as it was told, by day; sent twice it is kept once; no analysis goes stale", async () => {
  const db = await openAcademy();
  const second = { ...first, id: "p2", day: "2031-02-02", minutes: null, balls: 40 };
  expect(insertPractice(db, studentScope(), [first, second])).toBe(2);
  expect(insertPractice(db, studentScope(), [{ ...first, minutes: 99 }, second])).toBe(0);
  expect(readPractice(db, studentScope())).toEqual([
    { ...second, voidedAt: null },
    { ...first, voidedAt: null },
  ]);
  expect([readPractice(db, studentScope("s2")), revisionOf(db)]).toEqual([[], 0]);
});

test("a drill that wasn't given to the student is refused, and none of the entries is written", async () => {
  const db = await openAcademy();
  insertDrill(db, academyScope(), { id: "d1", name: "Wall", fundamentalId: "hinge", how: "", cautions: "" });
  const given = { id: "g1", drillId: "d1", fundamentalId: "hinge", start: "2031-02-02", end: null, dose: "" };
  insertAssignment(db, studentScope("s2"), given);
  const entries = [first, { ...first, id: "p2", assignmentId: "g1" }];
  expect(() => insertPractice(db, studentScope(), entries)).toThrow("no such drill of this student");
  expect(readPractice(db, studentScope())).toEqual([]);
  expect(insertPractice(db, studentScope("s2"), entries)).toBe(2);
});

test("taken back and put back in any order, the table holds what it held", async () => {
  const db = await openAcademy();
  insertPractice(db, studentScope(), [first, { ...first, id: "p2" }]);
  const before = await digestTables(db, ["practice"]);
  await fc.assert(
    fc.asyncProperty(fc.array(fc.constantFrom("p1", "p2", "p3"), { maxLength: 9 }), async (taken) => {
      for (const practiceId of taken) updatePracticeVoided(db, studentScope(), { practiceId, voidedAt: NOW });
      const standing = readPractice(db, studentScope()).filter((entry) => entry.voidedAt === null);
      expect(standing).toHaveLength(["p1", "p2"].filter((id) => !taken.some((each) => each === id)).length);
      for (const practiceId of taken) updatePracticeVoided(db, studentScope(), { practiceId, voidedAt: null });
      expect(await digestTables(db, ["practice"])).toEqual(before);
    }),
    { numRuns: 60, seed: 15 },
  );
  const other = updatePracticeVoided(db, studentScope("s2"), { practiceId: "p1", voidedAt: NOW });
  expect(other).toEqual({ kind: "unchanged" });
});
