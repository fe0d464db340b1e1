import { hashPassword } from "better-auth/crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { markOf } from "@/app/_server/access/known-browser";
import { meet } from "@/app/_server/access/meet";
import { receiveSignIn } from "@/app/_server/access/sign-in-desk";
import { insertAccount, insertPerson } from "@/db/write/people";
import { wordsFor } from "@/lib/words/catalogue";
import { NOW } from "../../../db/academy-fixture";
import { startAcademy } from "../own-academy-data";

const PASSWORD = "two larches in the wind";
const HOST = "127.0.0.1:3000";
const words = wordsFor("en");
let academy: Awaited<ReturnType<typeof startAcademy>>;
let help = "";

beforeAll(async () => {
  academy = await startAcademy();
  const { db, academy: here } = academy.viewer;
  const account = { userId: "help", name: "Help", email: "help@x.example", passwordHash: await hashPassword(PASSWORD) };
  insertAccount(db, { ...account, now: new Date() });
  insertPerson(db, {
    userId: "help",
    academyId: here.id,
    roles: ["assistant"],
    assists: [],
    addedAt: NOW,
    addedBy: "x",
  });
  const body = new URLSearchParams({ email: account.email, password: PASSWORD }).toString();
  const headers = { host: HOST, "content-type": "application/x-www-form-urlencoded" };
  const answer = await receiveSignIn(new Request(`http://${HOST}/api/sign-in`, { method: "POST", headers, body }));
  help = answer.headers
    .getSetCookie()
    .map((line) => line.split(";")[0])
    .join("; ");
});
afterAll(() => academy.remove());

function met(method: string, pathname: string, cookie: string, sent: Record<string, string> = {}) {
  const headers = new Headers({ host: HOST, cookie, ...sent });
  return meet({ method, pathname, search: "?a=1", headers }, { choice: null, locale: null }, words);
}

describe("at the outermost door", () => {
  it("whoever isn't logged in is led to the log-in from a page, and back; told so elsewhere", async () => {
    const back = { kind: "sign-in", href: "/sign-in?to=%2Fstudents%3Fa%3D1" };
    for (const method of ["GET", "HEAD"]) expect(await met(method, "/students", "")).toEqual(back);
    for (const [method, address] of [
      ["POST", "/students"],
      ["GET", "/api/archive"],
      ["POST", "/api/import"],
    ] as const) {
      const answer = await met(method, address, "");
      expect([address, answer.kind, "status" in answer && answer.status]).toEqual([address, "refused", 401]);
    }
    // A page's own script is led on by the answer of its action.
    expect((await met("POST", "/students", "", { "next-action": "x" })).kind).toBe("pass");
    expect(await met("GET", "/students", `proofband-own.known=${markOf("help@x.example")}`)).toEqual(back);
  });

  it("an assistant passes where values are entered, and finds nothing elsewhere", async () => {
    for (const address of ["/record", "/settings", "/", "/filming"]) {
      expect([address, (await met("GET", address, help)).kind]).toEqual([address, "pass"]);
    }
    for (const address of ["/students", "/students/new", "/import", "/api/archive", "/settings/keys", "/import/gone"]) {
      expect([address, (await met("GET", address, help)).kind]).toEqual([address, "absent"]);
    }
  });

  it("a change that isn't for the sender is refused in our words, with nothing of what was asked about", async () => {
    for (const sent of [{}, { "next-action": "x" }] as Record<string, string>[]) {
      const answer = await met("POST", "/students/new", help, sent);
      expect(answer).toMatchObject({ kind: "refused", status: 404 });
      const body = "body" in answer ? answer.body : "";
      expect(body).toContain("There is no such page for you.");
      expect(body).toContain("Nothing was changed.");
      expect(body).toContain(`Open Proofband at http://`);
    }
  });

  it("log-in, start and health are open to everybody, and an address of nobody's is left to the pages", async () => {
    for (const address of ["/sign-in", "/start", "/api/health", "/nothing", "/_next/static/x.js"])
      expect([address, await met("GET", address, "")]).toEqual([address, { kind: "pass", cookies: [] }]);
  });

  it("asking how long the log-in has left, as GET or HEAD, is no use of it; anything else is", async () => {
    const end = Date.now() + 600_000;
    const { sqlite } = academy.viewer.db;
    const expiry = () => sqlite.prepare("SELECT expires_at FROM auth_session WHERE user_id = 'help'").pluck().get();
    sqlite.prepare("UPDATE auth_session SET expires_at = ? WHERE user_id = 'help'").run(end);
    for (const method of ["GET", "HEAD"]) {
      expect(await met(method, "/api/log-in", help)).toEqual({ kind: "pass", cookies: [] });
      expect(expiry()).toBe(end);
    }
    expect((await met("POST", "/api/log-in", help)).kind).toBe("pass");
    expect(expiry()).toBeGreaterThan(end);
  });
});
