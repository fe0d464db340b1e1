import { describe, expect, test } from "vitest";
import { readGroupSessions } from "@/db/read/group-sessions";
import { insertGroupSessions } from "@/db/write/group-sessions";
import { academyScope, countingStamp, openAcademy, sessionOn, studentScope } from "../academy-fixture";

const part = () => ({ scope: studentScope(), session: sessionOn("2031-02-01", { sequence: null }) });

describe("the sessions of one occasion", () => {
  test("are kept with one group id, and the same group a second time writes nothing", async () => {
    const db = await openAcademy();
    const stamp = countingStamp("g");
    expect(insertGroupSessions(db, "g1", [part(), part()], stamp)).toBe("inserted");
    expect(insertGroupSessions(db, "g1", [part()], stamp)).toBe("exists");
    expect(readGroupSessions(db, academyScope()).map(({ groupId, day }) => [groupId, day])).toEqual([
      ["g1", "2031-02-01"],
      ["g1", "2031-02-01"],
    ]);
  });

  test("are kept whole or not at all: one that can't be written takes the others with it", async () => {
    const db = await openAcademy();
    const stamp = { ...countingStamp("g"), newId: () => "always-the-same" };
    expect(() => insertGroupSessions(db, "g1", [part(), part()], stamp)).toThrow("on file");
    expect(readGroupSessions(db, academyScope())).toEqual([]);
  });
});
