import { describe, expect, test } from "vitest";
import { readGoalBands } from "@/db/read/goal-bands";
import { insertGoalBand, updateBandsBegun } from "@/db/write/goal-bands";
import { findFundamental } from "@/lib/domain/catalogue";
import { type GoalBand, goalInForce } from "@/lib/domain/goal-band";
import { academyScope, countingStamp, NOW, openAcademy, revisionOf } from "../academy-fixture";

const band: GoalBand = {
  fundamentalId: "hinge",
  clubGroup: "iron",
  scope: "academy",
  ageFrom: null,
  ageTo: null,
  studentId: null,
  low: 80,
  high: 95,
  from: "2031-02-01",
  reason: "juniors",
};

describe("goal bands", () => {
  test("come back by first day, as entered, and decide by the narrowest", async () => {
    const db = await openAcademy();
    const stamp = countingStamp("b");
    const own: GoalBand = {
      ...band,
      scope: "student",
      studentId: "s1",
      low: null,
      from: "2031-01-15",
      reason: "wrist",
    };
    insertGoalBand(db, academyScope(), band, stamp);
    insertGoalBand(db, academyScope(), own, { ...stamp, who: "Coach" });
    const bands = readGoalBands(db, academyScope());
    expect(bands).toEqual([
      { ...own, id: "b2", who: "Coach", createdAt: NOW },
      { ...band, id: "b1", who: "", createdAt: NOW },
    ]);
    expect(readGoalBands(db, academyScope("a2"))).toEqual([]);
    const hinge = findFundamental("hinge", []);
    if (!hinge) throw new Error("no hinge");
    const reason = (id: string) => goalInForce(bands, hinge, "iron", { id, birthYear: null }, "2031-03-01").reason;
    expect([reason("s1"), reason("s2")]).toEqual(["wrist", "juniors"]);
  });

  test("mark the data of those whom they may reach as changed: all, those of a known age, or one", async () => {
    const db = await openAcademy();
    const revisions = () => [revisionOf(db, "s1"), revisionOf(db, "s2"), revisionOf(db, "t1")];
    insertGoalBand(db, academyScope(), band, countingStamp("b"));
    expect(revisions()).toEqual([1, 1, 0]);
    insertGoalBand(db, academyScope(), { ...band, scope: "age-range", ageFrom: 9, ageTo: 12 }, countingStamp("c"));
    expect(revisions()).toEqual([2, 1, 0]);
    insertGoalBand(db, academyScope(), { ...band, scope: "student", studentId: "s2" }, countingStamp("d"));
    expect(revisions()).toEqual([2, 2, 0]);
  });

  test("count as changed again on the day on which they begin, and with a year where there is one for an age", async () => {
    const db = await openAcademy();
    const revisions = () => [revisionOf(db, "s1"), revisionOf(db, "s2")];
    const begun = (after: string, upTo: string) => updateBandsBegun(db, academyScope(), { after, upTo });
    insertGoalBand(db, academyScope(), { ...band, scope: "student", studentId: "s2" }, countingStamp("b"));
    expect([begun("2031-01-30", "2031-01-31"), ...revisions()]).toEqual([0, 0, 1]);
    expect([begun("2031-01-31", "2031-02-01"), ...revisions()]).toEqual([1, 0, 2]);
    expect([begun("2031-02-01", "2032-02-01"), ...revisions()]).toEqual([0, 0, 2]);
    insertGoalBand(db, academyScope(), { ...band, scope: "age-range", ageFrom: 9, ageTo: 12 }, countingStamp("c"));
    expect([begun("2031-12-30", "2031-12-31"), ...revisions()]).toEqual([0, 1, 2]);
    expect([begun("2031-12-31", "2032-01-01"), ...revisions()]).toEqual([1, 2, 2]);
  });

  test("for a student of another academy, or built in, are not written", async () => {
    const db = await openAcademy();
    const foreign: GoalBand = { ...band, scope: "student", studentId: "t1" };
    expect(insertGoalBand(db, academyScope(), foreign, countingStamp())).toEqual({
      kind: "unknown-student",
      studentId: "t1",
    });
    const builtIn: GoalBand = { ...band, scope: "built-in" };
    expect(() => insertGoalBand(db, academyScope(), builtIn, countingStamp())).toThrow(RangeError);
    expect([readGoalBands(db, academyScope()).length, revisionOf(db, "t1")]).toEqual([0, 0]);
  });
});
