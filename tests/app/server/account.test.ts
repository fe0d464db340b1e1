import { randomUUID } from "node:crypto";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { findFormDraft } from "@/app/_server/draft/form-draft";
import { changePassword, endLogIns, saveAccount } from "@/app/_server/people/account-desk";
import { loadAccount } from "@/app/_server/people/load-account";
import { formOf } from "./first-student";
import { PASSWORD, type PeopleAcademy, startPeopleAcademy } from "./people-academy";

const FRESH = "six geese over the pond";

let academy: PeopleAcademy;
beforeEach(async () => {
  academy = await startPeopleAcademy();
});
afterEach(() => academy.remove());

async function both() {
  const [here, there] = [
    await academy.signIn("ada@range.example", PASSWORD),
    await academy.signIn("ada@range.example", PASSWORD, ""),
  ];
  const logIn = await academy.logIn(here);
  if (!logIn) throw new Error("not logged in");
  return { here, there, logIn, viewer: academy.viewer(academy.ownerId) };
}

describe("the own account", () => {
  it("a new password asks for the old one, ends every other log-in and leaves this one", async () => {
    const { here, there, logIn, viewer } = await both();
    const wrong = await changePassword(viewer, logIn, formOf({ current: "not this one at all", fresh: FRESH }));
    expect(wrong).toEqual({ kind: "refused", why: "wrong" });
    expect(await academy.logIn(there)).not.toBeNull();
    expect(await changePassword(viewer, logIn, formOf({ current: PASSWORD, fresh: "short" }))).toEqual({
      kind: "refused",
      why: "short",
    });
    expect(await changePassword(viewer, logIn, formOf({ current: PASSWORD, fresh: FRESH }))).toEqual({ kind: "done" });
    expect(await academy.logIn(there)).toBeNull();
    expect(await academy.logIn(here)).not.toBeNull();
    await expect(academy.signIn("ada@range.example", PASSWORD)).rejects.toThrow();
    expect(await academy.logIn(await academy.signIn("ada@range.example", FRESH))).not.toBeNull();
  });

  it("guesses at an open browser wait after three, as at the door", async () => {
    const { logIn, viewer } = await both();
    const guess = () => changePassword(viewer, logIn, formOf({ current: "guess", fresh: FRESH }));
    const said = [];
    for (let n = 0; n < 5; n++) said.push(await guess());
    expect(said.slice(0, 3).every((each) => each.kind === "refused" && each.why === "wrong")).toBe(true);
    expect(said[4]).toEqual({ kind: "refused", why: expect.stringMatching(/^wait-1?\d$/) });
    // The right one waits too: nothing was looked at.
    expect((await changePassword(viewer, logIn, formOf({ current: PASSWORD, fresh: FRESH }))).kind).toBe("refused");
  });

  it("logging out everywhere ends this log-in too", async () => {
    const { here, there, viewer } = await both();
    endLogIns(viewer);
    expect([await academy.logIn(here), await academy.logIn(there)]).toEqual([null, null]);
  });

  it("name and address are saved once; another's name or address is refused and what was typed is kept", async () => {
    await academy.add({ userId: "bo", name: "Bo", roles: ["coach"] });
    const viewer = academy.viewer("bo");
    const draft = randomUUID();
    const refused = saveAccount(viewer, formOf({ draft, name: " ADA ", email: "Ada@Range.example" }));
    if (refused.kind !== "refused") throw new Error("it was saved");
    const kept = findFormDraft(viewer, "account-form", refused.draftId);
    expect(Object.keys(kept?.errors ?? {})).toEqual(["name", "email"]);
    expect(kept?.entries).toContainEqual(["name", " ADA "]);
    expect(saveAccount(viewer, formOf({ name: "Bo  Marsh", email: "BO@elsewhere.example" }))).toEqual({
      kind: "saved",
    });
    expect(academy.viewer("bo").name).toBe("Bo Marsh");
    expect(await academy.logIn(await academy.signIn("bo@elsewhere.example", PASSWORD))).not.toBeNull();
  });

  it("the page lists the own log-ins by what the browser calls itself, and marks this one", async () => {
    const { logIn, viewer } = await both();
    const page = loadAccount(viewer, logIn, { draft: randomUUID() });
    const table = page.parts.flatMap((part) => (part.table ? [part.table] : []))[0];
    expect(table?.rows.map((row) => row.cells[0]).sort()).toEqual([
      "A browser that doesn’t say its name",
      "Otter on Linux (this one)",
    ]);
    expect(JSON.stringify(page)).not.toContain(logIn.token);
  });
});
