import { expect, test } from "vitest";
import { readAskings } from "@/db/read/asking";
import { insertAsking } from "@/db/write/asking";
import { askingOf } from "@/lib/domain/asking";
import { academyScope, NOW, openAcademy, revisionOf, studentScope } from "../academy-fixture";

const track = { studentId: "s1", fundamentalId: "hinge", clubGroup: "iron" } as const;
const decided = { fundamentalId: "hinge", clubGroup: "iron", day: "2031-02-01", who: "Owner", plan: null } as const;
const plan = { sessions: 3, swingsEach: 5, captureSd: 1.5, chance: 0.82, after: "2031-01-30" };

test("a question is stopped, asked again, planned: the latest holds, all stay, and no data change", async () => {
  const db = await openAcademy();
  const before = revisionOf(db);
  const now = () => askingOf(readAskings(db, studentScope()), track)?.state ?? null;
  expect([insertAsking(db, studentScope(), { ...decided, state: "asked" }, NOW), now()]).toEqual(["unchanged", null]);
  expect([insertAsking(db, studentScope(), { ...decided, state: "stopped" }, NOW), now()]).toEqual([
    "recorded",
    "stopped",
  ]);
  expect(insertAsking(db, studentScope(), { ...decided, state: "stopped" }, NOW)).toBe("unchanged");
  expect([insertAsking(db, studentScope(), { ...decided, state: "asked" }, NOW), now()]).toEqual(["recorded", null]);
  expect(insertAsking(db, studentScope(), { ...decided, state: "planned", plan }, NOW)).toBe("recorded");
  expect(askingOf(readAskings(db, academyScope()), track)).toMatchObject({ state: "planned", plan });
  expect(readAskings(db, studentScope()).map(({ state }) => state)).toEqual(["stopped", "asked", "planned"]);
  expect(readAskings(db, studentScope("s2"))).toEqual([]);
  expect(readAskings(db, academyScope("a2"))).toEqual([]);
  expect(askingOf(readAskings(db, studentScope()), { ...track, clubGroup: "driver" })).toBeNull();
  expect(revisionOf(db)).toBe(before);
});
