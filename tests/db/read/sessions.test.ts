import { expect, test } from "vitest";
import { readLatestClubs, readLatestContacts, readSessions } from "@/db/read/sessions";
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

test("the latest club of each group: of two films of a day the later, also where it was filmed with none; no other academy's", async () => {
  const db = await openAcademy();
  const stamp = { ...countingStamp(), batchId: null };
  const film = (day: string, club: string | null, clubGroup: "iron" | "wood", id = "s1", sequence = 1) =>
    insertSession(
      db,
      studentScope(id, id === "t1" ? "a2" : "a1"),
      sessionOn(day, { club, clubGroup, sequence, swings: [] }),
      stamp,
    );
  film("2031-02-03", "8-iron", "iron", "s1", 2);
  film("2031-02-03", "6-iron", "iron");
  film("2031-02-01", "9-iron", "iron");
  film("2031-02-02", "5-wood", "wood");
  film("2031-02-04", null, "wood");
  film("2031-02-05", "7-iron", "iron", "t1");
  const found = readLatestClubs(db, academyScope());
  expect(found).toEqual([
    { studentId: "s1", clubGroup: "iron", club: "8-iron" },
    { studentId: "s1", clubGroup: "wood", club: null },
  ]);
  for (const { clubGroup, club } of found)
    expect(readSessions(db, studentScope("s1"), clubGroup).at(-1)?.club).toBe(club);
});
