import { expect, test } from "vitest";
import { readPriorities } from "@/db/read/priorities";
import { insertPriority } from "@/db/write/priorities";
import { choiceOf } from "@/lib/domain/priority-choice";
import { academyScope, NOW, openAcademy, revisionOf, studentScope } from "../academy-fixture";

const iron = { clubGroup: "iron", reason: "His hands hurt with the grip that comes first.", who: "Owner" } as const;
const at = (day: string, fundamentalId: string | null) => ({ ...iron, day, fundamentalId });

test("the latest choice of a group of clubs holds, all stay, and no data change", async () => {
  const db = await openAcademy();
  const before = revisionOf(db);
  const now = (clubGroup: "iron" | "driver" = "iron") =>
    choiceOf(readPriorities(db, studentScope()), { studentId: "s1", clubGroup })?.fundamentalId ?? null;
  expect([insertPriority(db, studentScope(), at("2031-02-01", null), NOW), now()]).toEqual(["unchanged", null]);
  expect([insertPriority(db, studentScope(), at("2031-02-01", "hinge"), NOW), now()]).toEqual(["recorded", "hinge"]);
  expect([insertPriority(db, studentScope(), at("2031-02-08", "hip-sway"), NOW), now()]).toEqual([
    "recorded",
    "hip-sway",
  ]);
  expect(now("driver")).toBeNull();
  expect([insertPriority(db, studentScope(), at("2031-02-09", null), NOW), now()]).toEqual(["recorded", null]);
  expect(readPriorities(db, academyScope()).map(({ day, fundamentalId }) => [day, fundamentalId])).toEqual([
    ["2031-02-01", "hinge"],
    ["2031-02-08", "hip-sway"],
    ["2031-02-09", null],
  ]);
  expect(readPriorities(db, studentScope())[0]).toMatchObject({ studentId: "s1", ...at("2031-02-01", "hinge") });
  expect(revisionOf(db)).toBe(before);
});

test("another student's and another academy's are read by nobody else", async () => {
  const db = await openAcademy();
  insertPriority(db, studentScope("s2"), at("2031-02-01", "hinge"), NOW);
  expect(readPriorities(db, studentScope())).toEqual([]);
  expect(readPriorities(db, academyScope("a2"))).toEqual([]);
});
