import { describe, expect, test } from "vitest";
import { readOwningRules } from "@/db/read/owning-rules";
import { insertGoalBand } from "@/db/write/goal-bands";
import { insertOwningRule } from "@/db/write/owning-rules";
import { insertSession } from "@/db/write/sessions";
import { owningRuleOn } from "@/lib/domain/owning-rule";
import { academyScope, countingStamp, NOW, openAcademy, revisionOf, sessionOn, studentScope } from "../academy-fixture";

const rule = { from: "2031-03-01", sessions: 4, spanDays: 28, restDays: 7, share: 0.8, shareLow: 0.6 };
const by = {
  who: "Director",
  why: "a longer look",
  now: NOW,
  today: "2031-03-01",
  dayOf: (instant: string) => instant.slice(0, 10),
};

describe("owning rules", () => {
  test("come back in the order of entry, numbered, each as it was set; another academy's are not among them", async () => {
    const db = await openAcademy();
    expect(insertOwningRule(db, academyScope(), rule, by)).toEqual({ kind: "inserted", number: 1 });
    expect(insertOwningRule(db, academyScope(), { ...rule, from: "2031-04-01", sessions: 2 }, by)).toEqual({
      kind: "inserted",
      number: 2,
    });
    const { today: _, dayOf: __, now, ...told } = by;
    expect(readOwningRules(db, academyScope())).toEqual([
      { number: 1, ...rule, ...told, recordedAt: now },
      { number: 2, ...rule, from: "2031-04-01", sessions: 2, ...told, recordedAt: now },
    ]);
    expect(readOwningRules(db, academyScope("a2"))).toEqual([]);
  });

  test("begin today or later; one that is planned by a slip locks nothing: an earlier one takes its place for good", async () => {
    const db = await openAcademy();
    const early = insertOwningRule(db, academyScope(), { ...rule, from: "2031-02-28" }, by);
    expect(early).toEqual({ kind: "too-early", earliest: "2031-03-01" });
    insertOwningRule(db, academyScope(), { ...rule, from: "2031-05-01" }, by);
    expect(insertOwningRule(db, academyScope(), { ...rule, sessions: 5 }, by)).toMatchObject({ number: 2 });
    const rules = readOwningRules(db, academyScope());
    expect(["2031-03-01", "2031-05-01"].map((day) => owningRuleOn(rules, day)?.sessions)).toEqual([5, 5]);
    expect(insertOwningRule(db, academyScope(), { ...rule, from: "2031-05-01" }, by)).toMatchObject({ number: 3 });
  });

  test("mark those filmed on their first day or later, and everybody once a band has begun since", async () => {
    const db = await openAcademy();
    for (const [student, day] of [
      ["s1", "2031-03-01"],
      ["s2", "2031-02-28"],
    ] as const)
      insertSession(db, studentScope(student), sessionOn(day), { ...countingStamp(student), batchId: null });
    const revisions = () => [revisionOf(db, "s1"), revisionOf(db, "s2"), revisionOf(db, "t1")];
    const [s1 = 0, s2 = 0] = revisions();
    insertOwningRule(db, academyScope(), rule, by);
    expect(revisions()).toEqual([s1 + 1, s2, 0]);
    const band = { fundamentalId: "hinge", clubGroup: "iron", ageFrom: null, ageTo: null, low: 80, high: 95 } as const;
    const own = { ...band, scope: "student" as const, studentId: "s2", from: "2031-03-01", reason: "r" };
    insertGoalBand(db, academyScope(), own, { ...countingStamp("b"), who: "Coach" });
    insertOwningRule(db, academyScope(), rule, by);
    expect(revisions()).toEqual([s1 + 2, s2 + 2, 0]);
  });

  test("a band that was dated back decides from the academy's day of its entry, which is the next one in the east", async () => {
    const db = await openAcademy();
    const band = { fundamentalId: "hinge", clubGroup: "iron", ageFrom: null, ageTo: null, low: 80, high: 95 } as const;
    const own = { ...band, scope: "student" as const, studentId: "s2", from: "2031-02-01", reason: "r" };
    const entered = { ...countingStamp("b"), now: "2031-02-28T20:00:00.000Z", who: "Coach" };
    insertGoalBand(db, academyScope(), own, entered);
    const before = revisionOf(db, "s2") ?? 0;
    insertOwningRule(db, academyScope(), rule, by);
    expect(revisionOf(db, "s2")).toBe(before);
    const eastern = (instant: string) => new Date(Date.parse(instant) + 13 * 3_600_000).toISOString().slice(0, 10);
    insertOwningRule(db, academyScope(), rule, { ...by, dayOf: eastern });
    expect(revisionOf(db, "s2")).toBe(before + 1);
  });
});
