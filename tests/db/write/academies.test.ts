import { expect, test } from "vitest";
import { readAcademy } from "@/db/read/academies";
import { readMigrationCounts } from "@/db/read/migrations";
import { updateAcademy } from "@/db/write/academies";
import { academyScope, openAcademy, revisionOf } from "../academy-fixture";

test("a changed academy keeps the rest of its facts; with another season's start its students are judged anew", async () => {
  const db = await openAcademy();
  const before = readAcademy(db, academyScope());
  const change = { name: "Hill", ownerName: "Owner", zone: "UTC", seasonStart: before.seasonStart };
  updateAcademy(db, academyScope(), change);
  expect(readAcademy(db, academyScope())).toEqual({ ...before, ...change });
  expect(revisionOf(db)).toBe(0);
  updateAcademy(db, academyScope(), { ...change, seasonStart: "2031-03-01" });
  expect([revisionOf(db, "s1"), revisionOf(db, "s2"), revisionOf(db, "t1")]).toEqual([1, 1, 0]);
  expect(readAcademy(db, academyScope("a2")).name).toBe("Academy a2");
});

test("a migrated database has had every migration that there is", async () => {
  const { applied, known } = readMigrationCounts(await openAcademy());
  expect(known).toBeGreaterThan(0);
  expect(applied).toBe(known);
});
