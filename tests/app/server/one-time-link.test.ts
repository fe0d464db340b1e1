import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Viewer } from "@/app/_server/gate";
import { loadPeople } from "@/app/_server/people/load-people";
import { LINK_DAYS } from "@/app/_server/people/one-time-link";
import { makePasswordLink, revokeLink } from "@/app/_server/people/people-desk";
import { readStudents } from "@/db/read/students";
import { updateClockSeen } from "@/db/write/keeping";
import { addTo, FRESH, inviteBo, join, open } from "./inviting";
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

describe("a one-time link", () => {
  it("opened any number of times it uses nothing up; then it lets one in, once, and sees nothing but its own", async () => {
    addTo(ada, "Nia");
    const { token } = inviteBo(ada);
    expect([(await open(token)).kind, (await open(token)).kind]).toEqual(["pass", "pass"]);
    const came = await join(token, FRESH);
    expect([came.status, came.headers.get("location")]).toEqual([303, "/sign-in?new=account"]);
    const logIn = await academy.logIn(await academy.signIn("bo@range.example", FRESH));
    const bo = academy.viewer(logIn?.userId ?? "");
    expect([bo.name, bo.roles, readStudents(bo.db, bo.scope)]).toEqual(["Bo", ["coach"], []]);
    expect((await join(token, FRESH)).status).toBe(404);
  });

  it("is kept as a hash of more than 128 random bits", () => {
    const { token } = inviteBo(ada);
    expect(Buffer.from(token, "base64url")).toHaveLength(32);
    const kept = academy.db.sqlite.prepare<[], Record<string, unknown>>("SELECT * FROM invitation").all();
    expect(JSON.stringify(kept)).not.toContain(token);
    expect(String(kept[0]?.token_hash)).toMatch(/^[0-9a-f]{64}$/);
  });

  it("absent, used, expired and revoked look alike, to a reader and to whoever sends the form", async () => {
    const used = inviteBo(ada);
    await join(used.token, FRESH);
    const revoked = inviteBo(ada, { name: "Cy", email: "cy@range.example" });
    revokeLink(ada, revoked.id);
    const expired = inviteBo(ada, { name: "Di", email: "di@range.example" });
    academy.db.sqlite
      .prepare("UPDATE invitation SET expires_at = ? WHERE id = ?")
      .run(new Date().toISOString(), expired.id);
    const tokens = [used.token, revoked.token, expired.token, "x".repeat(43), "short", `${used.token}x`];
    const met = await Promise.all(tokens.map(open));
    expect(new Set(met.map((each) => JSON.stringify(each))).size).toBe(1);
    expect(met[0]).toMatchObject({ kind: "refused", status: 404 });
    const sent = await Promise.all(tokens.map((token) => join(token, FRESH)));
    expect(sent.map((each) => each.status)).toEqual(tokens.map(() => 404));
    expect(new Set(await Promise.all(sent.map((each) => each.text()))).size).toBe(1);
  });

  it("that had ended by a clock which has gone back since opens nothing again, and one made then opens", async () => {
    const old = inviteBo(ada);
    const seen = new Date(Date.now() + (LINK_DAYS + 1) * 24 * 3_600_000).toISOString();
    updateClockSeen(ada.db, ada.scope, seen);
    expect(await open(old.token)).toMatchObject({ kind: "refused", status: 404 });
    expect((await join(old.token, FRESH)).status).toBe(404);
    expect(loadPeople(ada, {}).parts.flatMap(({ forms }) => forms.filter(({ act }) => act === "revoke"))).toEqual([]);
    expect(await open(inviteBo(ada, { name: "Cy", email: "cy@range.example" }).token)).toMatchObject({ kind: "pass" });
  });

  it("a password that won't do leaves it open, says so, and shows no password", async () => {
    const { token } = inviteBo(ada);
    const answer = await join(token, "bo@range.example");
    expect(answer.status).toBe(422);
    const page = await answer.text();
    expect(page).toContain("your link still opens");
    expect(page).not.toContain('value="bo@range.example"');
    expect((await join(token, FRESH)).status).toBe(303);
  });

  it("of two windows one comes in", async () => {
    const { token } = inviteBo(ada);
    const answers = await Promise.all([join(token, FRESH), join(token, `${FRESH} too`)]);
    expect(answers.map((each) => each.status).sort()).toEqual([303, 404]);
  });

  it("for a new password ends every log-in at once, takes the place of an earlier one, and works once", async () => {
    await academy.add({ userId: "bo", name: "Bo", roles: ["coach"] });
    const sent = await academy.signIn("bo@range.example", PASSWORD);
    const first = makePasswordLink(ada, "bo").made?.path.slice("/join/".length) ?? "";
    expect(await academy.logIn(sent)).toBeNull();
    const second = makePasswordLink(ada, "bo").made?.path.slice("/join/".length) ?? "";
    expect((await join(first, FRESH)).status).toBe(404);
    expect((await join(second, FRESH)).headers.get("location")).toBe("/sign-in?new=password");
    await expect(academy.signIn("bo@range.example", PASSWORD)).rejects.toThrow();
    expect(await academy.logIn(await academy.signIn("bo@range.example", FRESH))).not.toBeNull();
    expect((await join(second, FRESH)).status).toBe(404);
  });
});
