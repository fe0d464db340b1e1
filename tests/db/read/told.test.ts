import { expect, test } from "vitest";
import { readTold } from "@/db/read/told";
import { told } from "@/db/schema-plans";
import { openAcademy, studentScope } from "../academy-fixture";

const AT = "2031-02-01T10:00:00.000Z";
const row = { studentId: "s1", clubGroup: "iron", kind: "file", text: "x", findings: "[]", day: "2031-02-01" } as const;

test("everything that a student's family was told, oldest first; findings that can't be read are none", async () => {
  const db = await openAcademy();
  const insert = (id: string, change: object = {}) =>
    db.orm
      .insert(told)
      .values({ ...row, id, who: "Owner", recordedAt: AT, ...change })
      .run();
  insert("b", { day: "2031-02-03", findings: "no" });
  insert("a");
  insert("c", { studentId: "s2" });
  insert("d", { recordedAt: "2031-02-01T11:00:00.000Z", voidedAt: AT });
  expect(readTold(db, studentScope()).map(({ id, findings, voidedAt }) => [id, findings, voidedAt])).toEqual([
    ["a", [], null],
    ["d", [], AT],
    ["b", null, null],
  ]);
});
