import { afterAll, beforeAll, expect, it } from "vitest";
import { receiveJoin } from "@/app/_server/people/join-desk";
import { readAssisted, readPeople } from "@/db/read/people";
import { FRESH, inviteBo } from "../app/server/inviting";
import { type PeopleAcademy, sentTo, startPeopleAcademy } from "../app/server/people-academy";
import { countCases } from "./count-cases";

const A6 = countCases("A6, sign-up by invitation", 10);

let academy: PeopleAcademy;
beforeAll(async () => {
  academy = await startPeopleAcademy();
});
afterAll(() => academy.remove());

/** What a form that lets somebody in might say of them. */
const FORGED: readonly (readonly [string, string])[] = [
  ["role", "owner"],
  ["roles", "owner"],
  ["roles", "director"],
  ["academyId", "another"],
  ["userId", "another"],
  ["name", "Another"],
  ["email", "another@range.example"],
  ["assists", "another"],
  ["createdAt", "1999-09-09"],
  ["addedBy", "Another"],
  ["who", "Another"],
];

it("A6: whoever comes in is what the invitation says, whatever the form says", async () => {
  const owner = academy.viewer(academy.ownerId);
  const { token } = inviteBo(owner);
  const body = new URLSearchParams([
    ["token", token],
    ["password", FRESH],
    ...FORGED.map(([name, value]) => [name, value]),
  ]);
  const request = new Request("http://127.0.0.1:3000/api/join", { method: "POST", headers: sentTo(), body });
  expect((await receiveJoin(request)).status).toBe(303);
  const [made, ...others] = readPeople(academy.db, academy.academyId).filter(
    ({ userId }) => userId !== academy.ownerId,
  );
  A6.add(FORGED.length);
  expect(others).toEqual([]);
  expect(made).toMatchObject({ name: "Bo", email: "bo@range.example", roles: ["coach"], endedAt: null });
  expect(made?.userId).not.toBe("another");
  expect(readAssisted(academy.db, made?.userId ?? "")).toEqual([]);
  const kept = academy.db.sqlite
    .prepare("SELECT added_by, added_at > '2020' AS isNow FROM person WHERE user_id = ?")
    .get(made?.userId);
  expect(kept).toEqual({ added_by: owner.name, isNow: 1 });
});

it("A6: nobody comes in without an invitation", async () => {
  for (const token of ["", "x", "f".repeat(43)]) {
    const body = new URLSearchParams([
      ["token", token],
      ["password", FRESH],
      ...FORGED.map(([name, value]) => [name, value]),
    ]);
    const request = new Request("http://127.0.0.1:3000/api/join", { method: "POST", headers: sentTo(), body });
    expect((await receiveJoin(request)).status).toBe(404);
    A6.add();
  }
});
