import { expect, test } from "vitest";
import { readLatestContacts } from "@/db/read/sessions";
import { insertSession } from "@/db/write/sessions";
import { academyScope, countingStamp, openAcademy, sessionOn, studentScope } from "../academy-fixture";

test("contacts add up over the latest counted sessions: 5/10 + 6/10 of three, a session without a count passed over", async () => {
  const db = await openAcademy();
  const stamp = { ...countingStamp(), batchId: null };
  const film = (day: string, solid: number | null, balls: number | null, id = "s1", academy = "a1") =>
    insertSession(db, studentScope(id, academy), sessionOn(day, { solid, balls, swings: [] }), stamp);
  film("2031-02-03", 6, 10);
  film("2031-02-01", 1, 10);
  film("2031-02-04", null, null);
  film("2031-02-02", 5, 10);
  film("2031-02-02", null, null, "s2");
  film("2031-02-02", 9, 10, "t1", "a2");
  expect(readLatestContacts(db, academyScope(), 2)).toEqual([{ studentId: "s1", solid: 11, balls: 20 }]);
});
