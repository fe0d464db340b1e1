import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Viewer } from "@/app/_server/gate";
import { giveStudents } from "@/app/_server/people/charge-desk";
import { invite } from "@/app/_server/people/invite-desk";
import { loadPeople } from "@/app/_server/people/load-people";
import { changeRoles, endAccess, makePasswordLink } from "@/app/_server/people/people-desk";
import { readStudents } from "@/db/read/students";
import { addTo, errorsOf, FRESH, form, inviteBo, join } from "./inviting";
import { PASSWORD, type PeopleAcademy, startPeopleAcademy } from "./people-academy";

let academy: PeopleAcademy;
let ada: Viewer;
beforeEach(async () => {
  academy = await startPeopleAcademy();
  ada = academy.viewer(academy.ownerId);
});
afterEach(() => {
  academy.remove();
});

describe("inviting", () => {
  it("refuses a name or address that somebody has, is invited under, or left with; and roles that do nothing", async () => {
    await academy.add({ userId: "bo", name: "Bo", roles: ["coach"] });
    endAccess(ada, "bo");
    const fields = { name: "bO", email: "new@range.example", roles: ["coach"] };
    expect(Object.keys(errorsOf(ada, fields))).toEqual(["name"]);
    inviteBo(ada, { name: "Cy", email: "cy@range.example" });
    expect(Object.keys(errorsOf(ada, { name: "cy", email: "CY@range.example", roles: ["coach"] }))).toEqual([
      "name",
      "email",
    ]);
    expect(Object.keys(errorsOf(ada, { name: "", email: "no address", roles: [] }))).toEqual([
      "name",
      "email",
      "roles",
    ]);
    expect(Object.keys(errorsOf(ada, { name: "Ed", email: "ed@range.example", roles: ["assistant"] }))).toEqual([
      "assists",
    ]);
  });

  it("a director makes no owner, by no form", async () => {
    await academy.add({ userId: "dot", name: "Dot", roles: ["director"] });
    await academy.add({ userId: "bo", name: "Bo", roles: ["coach"] });
    const dot = academy.viewer("dot");
    expect(Object.keys(errorsOf(dot, { name: "Ed", email: "ed@range.example", roles: ["owner"] }))).toEqual(["roles"]);
    expect(changeRoles(dot, "bo", form({ roles: ["owner", "coach"] }))).toEqual({ kind: "refused", why: "not-owner" });
    for (const tried of [
      changeRoles(dot, academy.ownerId, form({ roles: ["coach"] })),
      endAccess(dot, academy.ownerId),
      makePasswordLink(dot, academy.ownerId),
    ])
      expect(tried).toEqual({ kind: "refused", why: "not-owner" });
  });

  it("an assistant sees the students of the coaches they help, and of no other", async () => {
    await academy.add({ userId: "bo", name: "Bo", roles: ["coach"] });
    await academy.add({ userId: "cy", name: "Cy", roles: ["coach"] });
    const [nia, tove] = [addTo(ada, "Nia"), addTo(ada, "Tove")];
    giveStudents(ada, form({ students: [nia], coach: "bo" }));
    giveStudents(ada, form({ students: [tove], coach: "cy" }));
    const { token } = inviteBo(ada, { name: "Ed", email: "ed@range.example", roles: ["assistant"], assists: ["bo"] });
    await join(token, FRESH);
    const logIn = await academy.logIn(await academy.signIn("ed@range.example", FRESH));
    const ed = academy.viewer(logIn?.userId ?? "");
    expect(readStudents(ed.db, ed.scope).map((each) => each.alias)).toEqual(["Nia"]);
  });
});

describe("roles and the end of an access", () => {
  it("the last owner stays one and stays here; with a second one, the first may go", async () => {
    expect(changeRoles(ada, ada.userId ?? "", form({ roles: ["coach"] }))).toEqual({
      kind: "refused",
      why: "last-owner",
    });
    expect(endAccess(ada, ada.userId ?? "")).toEqual({ kind: "refused", why: "last-owner" });
    await academy.add({ userId: "bo", name: "Bo", roles: ["owner"] });
    expect(changeRoles(ada, ada.userId ?? "", form({ roles: ["coach"] }))).toEqual({ kind: "done" });
    expect(academy.viewer(ada.userId ?? "").roles).toEqual(["coach"]);
  });

  it("ended: the next request is nobody's, the students are in nobody's charge, and another coach gets them", async () => {
    await academy.add({ userId: "bo", name: "Bo", roles: ["coach"] });
    await academy.add({ userId: "cy", name: "Cy", roles: ["coach"] });
    const ids = [addTo(ada, "Nia"), addTo(ada, "Tove")];
    expect(giveStudents(ada, form({ students: ids, coach: "bo" }))).toEqual({ kind: "given", students: 2 });
    const sent = await academy.signIn("bo@range.example", PASSWORD);
    const bo = academy.viewer("bo");
    expect(readStudents(bo.db, bo.scope)).toHaveLength(2);
    expect(endAccess(ada, "bo")).toEqual({ kind: "done" });
    expect(await academy.logIn(sent)).toBeNull();
    expect(() => academy.viewer("bo")).toThrow();
    const page = JSON.stringify(loadPeople(ada, {}));
    expect(page).toContain("2 students are in nobody’s charge");
    expect(page).not.toMatch(/Nia|Tove/);
    giveStudents(ada, form({ students: ids, coach: "cy" }));
    const cy = academy.viewer("cy");
    expect(readStudents(cy.db, cy.scope).map((each) => each.alias)).toEqual(["Nia", "Tove"]);
    expect(giveStudents(ada, form({ students: ids, coach: "bo" })).kind).toBe("refused");
    expect(giveStudents(ada, form({ students: ["unknown"], coach: "cy" })).kind).toBe("refused");
  });

  it("who coaches no more has nobody in charge; who helps nobody is no assistant", async () => {
    await academy.add({ userId: "bo", name: "Bo", roles: ["coach"] });
    const nia = addTo(ada, "Nia");
    giveStudents(ada, form({ students: [nia], coach: "bo" }));
    expect(changeRoles(ada, "bo", form({ roles: ["assistant"] }))).toEqual({ kind: "refused", why: "no-coach" });
    // Nobody helps themselves.
    expect(changeRoles(ada, "bo", form({ roles: ["assistant"], assists: ["bo"] }))).toEqual({
      kind: "refused",
      why: "no-coach",
    });
    expect(changeRoles(ada, "bo", form({ roles: ["assistant"], assists: [ada.userId ?? ""] }))).toEqual({
      kind: "done",
    });
    expect(JSON.stringify(loadPeople(ada, {}))).toContain("One student is in nobody’s charge");
  });

  it("giving a coach the students they have changes nothing; a link is shown once", () => {
    const nia = addTo(ada, "Nia");
    const count = () => academy.db.sqlite.prepare("SELECT count(*) FROM charge").pluck().get();
    giveStudents(ada, form({ students: [nia], coach: ada.userId ?? "" }));
    const before = count();
    giveStudents(ada, form({ students: [nia], coach: ada.userId ?? "" }));
    expect(count()).toBe(before);
    const made = invite(ada, form({ name: "Bo", email: "bo@range.example", roles: ["coach"] }));
    const shown = () => JSON.stringify(loadPeople(ada, { made: made.kind === "invited" ? made.id : "" }));
    expect(shown()).toContain("/join/");
    expect(shown()).not.toContain("/join/");
  });
});
