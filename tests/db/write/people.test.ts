import { beforeEach, describe, expect, it } from "vitest";
import type { Database } from "@/db/client";
import { readAssisted, readChargedStudents, readCharges, readPeople, readPerson } from "@/db/read/people";
import { adoptAcademy, insertAccount, insertAssists, insertPerson, updatePassword } from "@/db/write/people";
import { countingStamp, countRows, NOW, openAcademy } from "../academy-fixture";
import { openFilledAcademy } from "../filled-academy";

let db: Database;
beforeEach(async () => {
  db = await openAcademy();
});

function add(userId: string, academyId = "a1"): void {
  insertAccount(db, { userId, name: userId, email: `${userId}@x.example`, passwordHash: "old", now: new Date(NOW) });
  insertPerson(db, { userId, academyId, roles: ["coach", "owner"], assists: [], addedAt: NOW, addedBy: "Owner" });
}

const count = (sql: string): number => db.sqlite.prepare<[], number>(sql).pluck().get() ?? -1;

describe("people", () => {
  it("are read with their roles in one order, by name, each academy its own", () => {
    for (const id of ["zoe", "abe"]) add(id);
    add("far", "a2");
    expect(readPeople(db, "a1").map(({ userId, roles }) => [userId, roles])).toEqual([
      ["abe", ["owner", "coach"]],
      ["zoe", ["owner", "coach"]],
    ]);
    expect(readPerson(db, "far")?.academyId).toBe("a2");
    expect(readPerson(db, "nobody")).toBeUndefined();
  });

  it("share no address, and an account that fails leaves nothing", () => {
    add("abe");
    const twin = { userId: "twin", name: "t", email: "abe@x.example", passwordHash: "p", now: new Date(NOW) };
    expect(() => insertAccount(db, twin)).toThrow(/UNIQUE/);
    expect([countRows(db, "user"), countRows(db, "account")]).toEqual([1, 1]);
    expect(() =>
      insertPerson(db, { userId: "abe", academyId: "a1", roles: ["coach"], assists: [], addedAt: NOW, addedBy: "" }),
    ).toThrow();
    expect(count("SELECT count(*) FROM person_role WHERE user_id = 'abe'")).toBe(2);
  });

  it("a person helps coaches that are there, or isn't added at all", () => {
    add("abe");
    insertAccount(db, { userId: "h", name: "h", email: "h@x.example", passwordHash: "p", now: new Date(NOW) });
    const help = { userId: "h", academyId: "a1", roles: ["assistant"], addedAt: NOW, addedBy: "" } as const;
    expect(() => insertPerson(db, { ...help, assists: ["abe", "nobody"] })).toThrow(/FOREIGN/);
    expect(readPerson(db, "h")).toBeUndefined();
    insertPerson(db, { ...help, assists: [] });
    insertAssists(db, "h", ["abe"]);
    expect(readAssisted(db, "h")).toEqual(["abe"]);
  });

  it("a new password ends every log-in of that account and of no other", () => {
    for (const id of ["abe", "zoe"]) {
      add(id);
      for (const n of [1, 2])
        db.sqlite
          .prepare(
            "INSERT INTO auth_session (id, token, user_id, expires_at, created_at, updated_at) VALUES (?, ?, ?, 9, 1, 1)",
          )
          .run(`${id}${n}`, `${id}${n}`, id);
    }
    updatePassword(db, "abe", "new", new Date(NOW));
    expect(count("SELECT count(*) FROM auth_session WHERE user_id = 'abe'")).toBe(0);
    expect(count("SELECT count(*) FROM auth_session WHERE user_id = 'zoe'")).toBe(2);
    expect(count("SELECT count(*) FROM account WHERE password = 'new'")).toBe(1);
  });
});

describe("an academy from before there were accounts", () => {
  const owner = { userId: "u1", academyId: "a1", name: "Coach", fromDay: "2031-01-01", now: NOW };

  it("becomes its first person's: every student, draft, key, import and preference, and nothing of another academy", async () => {
    db = await openFilledAcademy();
    db.sqlite.exec(`DELETE FROM charge; UPDATE draft SET user_id = NULL; UPDATE access_token SET user_id = NULL;
      UPDATE import_batch SET user_id = NULL`);
    adoptAcademy(db, owner, countingStamp("ch").newId);
    expect(readChargedStudents(db, ["u1"], "2031-01-01")).toEqual(["s1", "s2"]);
    expect(readChargedStudents(db, ["u1"], "2030-12-31")).toEqual([]);
    expect(readCharges(db, "a1").map(({ kind, untilDay, who }) => [kind, untilDay, who])).toEqual([
      ["own", null, "Coach"],
      ["own", null, "Coach"],
    ]);
    for (const table of ["draft", "access_token", "import_batch"])
      expect([table, count(`SELECT count(*) FROM ${table} WHERE user_id IS NOT 'u1'`)]).toEqual([table, 0]);
    for (const table of ["seen", "preference"])
      expect([table, count(`SELECT count(*) FROM ${table} WHERE viewer <> 'u1'`)]).toEqual([table, 0]);
  });

  it("leaves what is somebody's already with them", async () => {
    db = await openFilledAcademy();
    db.sqlite.exec("UPDATE draft SET user_id = 'u2'; DELETE FROM charge");
    adoptAcademy(db, owner, countingStamp("ch").newId);
    expect(count("SELECT count(*) FROM draft WHERE user_id = 'u2'")).toBe(1);
  });

  it("is adopted whole or not at all", async () => {
    db = await openFilledAcademy();
    db.sqlite.exec("UPDATE draft SET user_id = NULL; DELETE FROM charge");
    expect(() => adoptAcademy(db, owner, () => "one id for all")).toThrow(/UNIQUE/);
    expect([countRows(db, "charge"), count("SELECT count(*) FROM draft WHERE user_id IS NULL")]).toEqual([0, 1]);
  });

  it("whose owner has had two names is adopted all the same, with what was set under the present one", async () => {
    db = await openFilledAcademy();
    db.sqlite.exec(
      "DELETE FROM charge; INSERT INTO preference (academy_id, viewer, name, value) SELECT academy_id, 'Coach', name, 'on' FROM preference",
    );
    adoptAcademy(db, owner, countingStamp("ch").newId);
    expect(count("SELECT count(*) FROM preference WHERE viewer = 'u1' AND value = 'on'")).toBe(1);
    expect(countRows(db, "preference")).toBe(1);
  });
});
