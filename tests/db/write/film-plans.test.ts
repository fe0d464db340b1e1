import { expect, test } from "vitest";
import { readFilmPlans } from "@/db/read/film-plans";
import { insertFilmPlan, updateFilmPlanReminded, updateFilmPlanVoided } from "@/db/write/film-plans";
import { openAcademy, revisionOf, studentScope } from "../academy-fixture";

const body = { fundamentals: [{ id: "hinge", swings: 5 }], views: ["face-on" as const], care: ["yaw" as const] };
const told = { clubGroup: "iron", madeOn: "2031-02-01", dueOn: "2031-02-08", body, who: "Owner" } as const;
const at = (hour: string) => `2031-02-01T${hour}:00:00.000Z`;

test("a plan is kept as told, reminded of, taken back and put back; the data stay as they were", async () => {
  const db = await openAcademy();
  const before = revisionOf(db);
  const mine = studentScope();
  insertFilmPlan(db, mine, { id: "p2", ...told, recordedAt: at("10") });
  insertFilmPlan(db, mine, { id: "p1", ...told, recordedAt: at("09") });
  insertFilmPlan(db, studentScope("s2"), { id: "p3", ...told, recordedAt: at("09") });
  const states = () => readFilmPlans(db, mine).map(({ id, remindedAt, voidedAt }) => [id, remindedAt, voidedAt]);
  expect(states()).toEqual([
    ["p1", null, null],
    ["p2", null, null],
  ]);
  expect(readFilmPlans(db, mine)[0]).toMatchObject({ ...told, clubGroup: "iron" });
  expect(updateFilmPlanReminded(db, mine, { planId: "p1", now: at("11") })).toBe("updated");
  expect(updateFilmPlanVoided(db, mine, { planId: "p1", voidedAt: at("12") })).toBe("updated");
  expect(updateFilmPlanVoided(db, mine, { planId: "p1", voidedAt: at("13") })).toBe("unchanged");
  expect(updateFilmPlanReminded(db, mine, { planId: "p1", now: at("14") })).toBe("unchanged");
  expect(states()[0]).toEqual(["p1", at("11"), at("12")]);
  expect(updateFilmPlanVoided(db, mine, { planId: "p1", voidedAt: null })).toBe("updated");
  expect(updateFilmPlanVoided(db, mine, { planId: "p1", voidedAt: null })).toBe("unchanged");
  // Of another student, or of none.
  expect(updateFilmPlanReminded(db, mine, { planId: "p3", now: at("15") })).toBe("unchanged");
  expect(updateFilmPlanVoided(db, mine, { planId: "p3", voidedAt: at("15") })).toBe("unchanged");
  expect(states()[0]).toEqual(["p1", at("11"), null]);
  expect(() =>
    insertFilmPlan(db, mine, { id: "p4", ...told, body: { ...body, views: [] }, recordedAt: at("16") }),
  ).toThrow();
  expect(states()).toHaveLength(2);
  expect(revisionOf(db)).toBe(before);
});
