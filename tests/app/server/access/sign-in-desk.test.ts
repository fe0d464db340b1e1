import { hashPassword } from "better-auth/crypto";
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { readLogIn } from "@/app/_server/access/log-in";
import { cookiesIn, receiveSignIn, receiveSignOut } from "@/app/_server/access/sign-in-desk";
import { insertAccount, insertPerson } from "@/db/write/people";
import { NOW } from "../../../db/academy-fixture";
import { countCases } from "../../../trust/count-cases";
import { startAcademy } from "../own-academy-data";

const S = countCases("S3, S4, S6 (unit): log-ins over https and http", 40);
const PASSWORD = "two larches in the wind";
const PUBLIC = "school.example";
let academy: Awaited<ReturnType<typeof startAcademy>>;

beforeAll(async () => {
  vi.stubEnv("PROOFBAND_ORIGIN", `https://${PUBLIC}`);
  academy = await startAcademy();
  const passwordHash = await hashPassword(PASSWORD);
  const { db, academy: here } = academy.viewer;
  for (const userId of ["coach", "gone"]) {
    insertAccount(db, { userId, name: userId, email: `${userId}@x.example`, passwordHash, now: new Date() });
    insertPerson(db, { userId, academyId: here.id, roles: ["coach"], assists: [], addedAt: NOW, addedBy: "x" });
  }
  db.sqlite.prepare("UPDATE person SET ended_at = ?, ended_by = 'x' WHERE user_id = 'gone'").run(NOW);
});
beforeEach(() => {
  academy.viewer.db.sqlite.exec("DELETE FROM sign_in_try; DELETE FROM auth_session");
});
afterAll(() => {
  vi.unstubAllEnvs();
  academy.remove();
});

function request(host: string, fields: Record<string, string>, cookie = ""): Request {
  S.add();
  const headers = { host, cookie, "content-type": "application/x-www-form-urlencoded" };
  return new Request(`http://${host}/api/sign-in`, {
    method: "POST",
    headers,
    body: new URLSearchParams(fields).toString(),
  });
}

async function enter(host: string, email = "coach@x.example", password = PASSWORD, cookie = "") {
  const answer = await receiveSignIn(request(host, { email, password, to: "/students" }, cookie));
  const lines = answer.headers.getSetCookie();
  return { answer, lines, cookie: lines.map((line) => line.split(";")[0]).join("; ") };
}

const logIns = (): number =>
  academy.viewer.db.sqlite.prepare<[], number>("SELECT count(*) FROM auth_session").pluck().get() ?? -1;

const shown = (host: string, cookie: string) => readLogIn(academy.viewer.db, "own", new Headers({ host, cookie }));

describe("a log-in", () => {
  it("over https has cookies that are bound to the host, secure, and hidden from scripts", async () => {
    const { answer, lines, cookie } = await enter(PUBLIC);
    expect([answer.status, answer.headers.get("location")]).toEqual([303, "/students"]);
    expect(lines).toHaveLength(2);
    for (const line of lines) {
      expect(line).toMatch(/^__Host-proofband-own\.(session_token|known)=/);
      for (const flag of [/; Secure/, /; HttpOnly/, /; SameSite=Lax/i, /; Path=\/(;|$)/]) expect(line).toMatch(flag);
      expect(line).not.toMatch(/Domain/i);
    }
    expect((await shown(PUBLIC, cookie))?.userId).toBe("coach");
  });

  it("over https isn’t one over http, and the other way round", async () => {
    const { cookie } = await enter(PUBLIC);
    expect(await shown("127.0.0.1:3000", cookie)).toBeNull();
    const local = await enter("127.0.0.1:3000");
    for (const line of local.lines) expect(line).not.toMatch(/Secure|__Host-/);
    expect(await shown(PUBLIC, local.cookie)).toBeNull();
  });

  it("takes the place of the one that the browser had", async () => {
    const first = await enter(PUBLIC);
    const second = await enter(PUBLIC, undefined, undefined, first.cookie);
    expect(second.cookie).not.toBe(first.cookie);
    expect([await shown(PUBLIC, first.cookie), logIns()]).toEqual([null, 1]);
    const wrong = await enter(PUBLIC, undefined, "not the password", second.cookie);
    expect([wrong.answer.status, logIns()]).toEqual([401, 1]);
    expect((await shown(PUBLIC, second.cookie))?.userId).toBe("coach");
  });

  it("ends on both sides", async () => {
    const { cookie } = await enter(PUBLIC);
    const out = await receiveSignOut(request(PUBLIC, {}, cookie));
    expect(out.headers.getSetCookie().join("\n")).toMatch(/__Host-proofband-own\.session_token=;.*Max-Age=0/);
    expect([await shown(PUBLIC, cookie), logIns()]).toEqual([null, 0]);
  });

  it("of somebody who has left, is unknown, or mistyped: the same words, no cookie, and no log-in left behind", async () => {
    const told = new Set<string>();
    for (const [email, password] of [
      ["gone@x.example", PASSWORD],
      ["stranger@x.example", PASSWORD],
      ["coach@x.example", "not the password"],
      ["' OR 1=1 --", PASSWORD],
      ["coach@x.example\u0000", PASSWORD],
    ] as const) {
      const { answer, lines } = await enter(PUBLIC, email, password);
      expect([email, answer.status, lines, logIns()]).toEqual([email, 401, [], 0]);
      told.add((await answer.text()).replaceAll(/value="[^"]*"/g, ""));
    }
    expect(told.size).toBe(1);
  });

  it("waits after 3 wrong ones, says how long, and doesn't look at the right one meanwhile", async () => {
    for (let n = 0; n < 3; n++) expect((await enter(PUBLIC, undefined, `wrong ${n}`)).answer.status).toBe(401);
    const { answer, lines } = await enter(PUBLIC);
    expect([answer.status, lines, logIns()]).toEqual([429, [], 0]);
    // Fifteen seconds from the third; on a busy machine some of them are over.
    const wait = Number(answer.headers.get("retry-after"));
    expect(wait).toBeGreaterThan(0);
    expect(wait).toBeLessThanOrEqual(15);
  });

  it("of 200 wrong ones sent at once looks at 3", async () => {
    const sent = Array.from({ length: 200 }, (_, n) => enter(PUBLIC, undefined, `guess ${n}`));
    const statuses = (await Promise.all(sent)).map(({ answer }) => answer.status);
    expect(statuses.filter((status) => status === 401)).toHaveLength(3);
    expect(statuses.filter((status) => status === 429)).toHaveLength(197);
  });

  it("with nothing, or another thing than a form, is a refusal and no error", async () => {
    for (const body of ["", "{", "email[]=x", "email=&password="]) {
      const headers = {
        host: PUBLIC,
        "content-type": "application/json",
        cookie: "proofband-own.known=%E0%A4%A; =; x",
      };
      const answer = await receiveSignIn(
        new Request(`http://${PUBLIC}/api/sign-in`, { method: "POST", headers, body }),
      );
      expect([body, answer.status]).toEqual([body, 422]);
      S.add();
    }
  });
});

it("a request's cookies are read whatever they hold", () => {
  const jar = cookiesIn(new Request("http://x/", { headers: { cookie: "a=1; b=%E0%A4%A; c; d=x=y; e=%20" } }));
  expect(["a", "b", "d", "e", "none"].map((name) => jar.get(name)?.value)).toEqual([
    "1",
    "%E0%A4%A",
    "x=y",
    " ",
    undefined,
  ]);
});
