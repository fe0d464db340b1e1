import { afterAll, beforeAll, expect, it, vi } from "vitest";
import { lookAt, MANY_ROWS } from "@/app/_server/access/looks";
import { MATRIX, mayPass, type RowKey, type RowOf } from "@/app/_server/access/matrix";
import { noteLookAtMany, requireStudent } from "@/app/_server/gate";
import { insertCharge } from "@/db/write/people";
import { insertStudent } from "@/db/write/students";
import type { Role } from "@/lib/domain/person";
import { PASSWORD, type PeopleAcademy, startPeopleAcademy } from "../app/server/people-academy";
import { countingStamp, NOW } from "../db/academy-fixture";
import { countCases } from "./count-cases";

// P5 at the gate itself: whatever asks it for a student leaves an entry, so that a new page can't forget to. With a real server
// and every address: looks.spec.ts.

const request = vi.hoisted(() => ({ headers: new Headers() }));
vi.mock("next/headers", () => ({
  headers: async () => request.headers,
  cookies: async () => ({ get: () => undefined }),
}));

const cases = countCases("P5: rows of the matrix, students and roles at the gate", 250);
const LOOKERS: readonly { readonly id: string; readonly roles: readonly Role[]; readonly as: Role }[] = [
  { id: "robin", roles: ["coach"], as: "coach" },
  { id: "dove", roles: ["director"], as: "director" },
  { id: "siskin", roles: ["assistant"], as: "assistant" },
];

let people: PeopleAcademy;
const cookies = new Map<string, Headers>();

beforeAll(async () => {
  people = await startPeopleAcademy();
  const { db } = people;
  const { scope } = people.viewer(people.ownerId);
  const bird = { birthYear: null, hand: "right", zone: "UTC", clubs: "" } as const;
  for (const id of ["one", "two"])
    insertStudent(db, { ...scope, userId: null }, { id, alias: id, ...bird }, null, countingStamp(id));
  for (const { id, roles } of LOOKERS)
    await people.add({ userId: id, name: id, roles, assists: roles[0] === "assistant" ? ["robin"] : [] });
  await people.add({ userId: "finch", name: "finch", roles: ["coach"] });
  const from = { fromDay: "2020-01-01", untilDay: null, who: "Ada", recordedAt: NOW, kind: "own" } as const;
  insertCharge(db, { id: "c", studentId: "one", coachId: "robin", ...from });
  // Directors are let in with a second step alone.
  db.sqlite.exec("UPDATE user SET two_factor_enabled = 1 WHERE id = 'dove'");
  for (const id of ["robin", "siskin", "finch"]) cookies.set(id, await people.signIn(`${id}@range.example`, PASSWORD));
  db.sqlite.exec("UPDATE user SET two_factor_enabled = 0 WHERE id = 'dove'");
  cookies.set("dove", await people.signIn("dove@range.example", PASSWORD));
  db.sqlite.exec("UPDATE user SET two_factor_enabled = 1 WHERE id = 'dove'");
});
afterAll(() => people.remove());

const rows = (Object.keys(MATRIX) as RowKey[]).filter((row): row is RowOf<"student"> => MATRIX[row].of === "student");

function entries(): unknown[] {
  const found = people.db.sqlite
    .prepare("SELECT student_id AS of, who, role, what, place FROM record_view ORDER BY id")
    .all();
  people.db.sqlite.exec("DELETE FROM record_view");
  return found;
}

async function ask(row: RowOf<"student">, studentId: string, who: string): Promise<"let in" | "refused"> {
  request.headers = cookies.get(who) ?? new Headers();
  return requireStudent(row, studentId).then(
    () => "let in",
    () => "refused",
  );
}

it("P5: one entry for each row of a student that is no press, by whoever may pass it; asked twice it is one", async () => {
  for (const row of rows)
    for (const { id, roles, as } of LOOKERS) {
      const asked = [await ask(row, "one", id), await ask(row, "one", id)];
      const may = mayPass(row, roles);
      const what = lookAt(row);
      const entry = { of: "one", who: id, role: as, what, place: row };
      // A file that went out twice is two.
      const wanted = !may || what === null ? [] : what === "file" ? [entry, entry] : [entry];
      expect([row, id, ...asked]).toEqual([row, id, ...(may ? ["let in", "let in"] : ["refused", "refused"])]);
      expect([row, id, entries()]).toEqual([row, id, wanted]);
      cases.add();
    }
});

it("P5: whoever is refused leaves none: of another's student, of none, and of nobody", async () => {
  for (const row of rows)
    for (const [student, who] of [
      ["two", "robin"],
      ["one", "finch"],
      ["none", "robin"],
      ["one", "nobody"],
    ] as const) {
      expect([row, student, who, await ask(row, student, who)]).toEqual([row, student, who, "refused"]);
      expect(entries()).toEqual([]);
      cases.add();
    }
});

it("P5: a file with many records is a look at each student whom the viewer may see, and at no other", () => {
  for (const row of MANY_ROWS) {
    noteLookAtMany(people.viewer("robin"), row, ["one", "two", "none"]);
    expect(entries()).toEqual([{ of: "one", who: "robin", role: "coach", what: "file", place: row }]);
    cases.add();
  }
});
