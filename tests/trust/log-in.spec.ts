import { expect, test } from "../e2e/watched";
import { addRoles, host, signIn, withDemo } from "./demo-roles";
import { sendRaw } from "./raw-request";

// S3, S4, S8 where the demo is reached over http; over https in tests/app/server/access/sign-in-desk.test.ts.

const EMAIL = "dove@demo.example";
const OWN = { Host: host, Origin: `http://${host}` };

test.beforeAll(addRoles);

async function opens(cookie: string): Promise<boolean> {
  const { status, headers } = await sendRaw("GET", "/students", { Host: host, cookie });
  expect([200, 303]).toContain(status);
  expect(headers["cache-control"]).toContain("no-store");
  return status === 200;
}

/** The token behind a cookie, as the table of log-ins has it. */
function tokenIn(cookie: string): string {
  const value = /session_token=([^;]+)/.exec(cookie)?.[1] ?? "";
  return decodeURIComponent(value).split(".")[0] ?? "";
}

test("S3: the cookie of a log-in is for this host, hidden from scripts, and not sent from elsewhere", async () => {
  const { status, setCookies } = await signIn(EMAIL);
  expect(status).toBe(303);
  for (const line of setCookies) {
    expect(line).toMatch(/; Path=\/(;|$)/);
    expect(line).toMatch(/; HttpOnly(;|$)/);
    expect(line).toMatch(/; SameSite=Lax(;|$)/i);
    expect(line).not.toMatch(/; (Secure|Domain)/);
  }
  expect(setCookies.map((line) => line.split("=")[0]).sort()).toEqual([
    "proofband-demo.known",
    "proofband-demo.session_token",
  ]);
});

test("S4: a log-in has a new token each time; what the browser showed before is dead, and one made up opens nothing", async () => {
  const tokens = new Set<string>();
  let before = await signIn(EMAIL);
  for (let n = 0; n < 10; n++) {
    tokens.add(tokenIn(before.cookie));
    const next = await signIn(EMAIL, { sent: before.cookie });
    expect(await opens(before.cookie)).toBe(false);
    expect(await opens(next.cookie)).toBe(true);
    before = next;
  }
  expect(tokens.size).toBe(10);
  const made = `proofband-academy=demo; proofband-demo.session_token=${"a".repeat(32)}.${"b".repeat(43)}%3D`;
  const { cookie, setCookies } = await signIn(EMAIL, { sent: made });
  expect(setCookies.join()).not.toContain("a".repeat(32));
  expect(await opens(made)).toBe(false);
  // The signature of one log-in under the token of another.
  const turned = cookie.replace(tokenIn(cookie), tokenIn(before.cookie));
  expect(await opens(turned)).toBe(false);
  console.log("S4: 10 log-ins in one browser, 2 cookies made up");
});

test("S4: after the log-out the cookie is dead, on this side too; another browser's is not", async () => {
  const [one, other] = [await signIn(EMAIL), await signIn(EMAIL)];
  const out = await sendRaw("POST", "/api/sign-out", { ...OWN, cookie: one.cookie });
  expect([out.status, out.headers.location]).toEqual([303, "/sign-in"]);
  expect(out.headers["set-cookie"]?.join("\n")).toMatch(/session_token=;.*Max-Age=0/);
  expect(await opens(one.cookie)).toBe(false);
  expect(await opens(other.cookie)).toBe(true);
  expect(await sendRaw("POST", "/api/sign-out", { ...OWN, cookie: one.cookie })).toMatchObject({ status: 303 });
});

const HOUR = 3_600_000;

test("S4: a log-in ends after 12 hours unused, and 30 days after it began however it was used", async () => {
  const cases: readonly (readonly [string, number, number, boolean])[] = [
    ["used 11 h 55 min ago", 300_000, -13 * HOUR, true],
    ["used 12 h ago", -1000, -13 * HOUR, false],
    ["30 days old less 5 minutes", 12 * HOUR, -720 * HOUR + 300_000, true],
    ["30 days old", 12 * HOUR, -720 * HOUR - 1000, false],
    ["31 days old and said to end in a year", 8760 * HOUR, -744 * HOUR, false],
  ];
  for (const [name, ends, began, lives] of cases) {
    const { cookie } = await signIn(EMAIL);
    withDemo((db) =>
      db.sqlite
        .prepare("UPDATE auth_session SET expires_at = ?, created_at = ?, updated_at = ? WHERE token = ?")
        .run(Date.now() + ends, Date.now() + began, Date.now() - 1000, tokenIn(cookie)),
    );
    expect([name, await opens(cookie)]).toEqual([name, lives]);
  }
  console.log(`S4: ${cases.length} ages of a log-in`);
});

test("S4: a used log-in's hour moves, and never past the thirtieth day", async () => {
  const { cookie } = await signIn(EMAIL);
  const read = () =>
    withDemo((db) =>
      db.sqlite
        .prepare<[string], number>("SELECT expires_at FROM auth_session WHERE token = ?")
        .pluck()
        .get(tokenIn(cookie)),
    ) ?? 0;
  const soon = Date.now() + HOUR;
  withDemo((db) =>
    db.sqlite
      .prepare("UPDATE auth_session SET expires_at = ?, updated_at = ? WHERE token = ?")
      .run(soon, Date.now() - 11 * HOUR, tokenIn(cookie)),
  );
  expect(await opens(cookie)).toBe(true);
  expect(read()).toBeGreaterThan(soon);
  expect(read()).toBeLessThanOrEqual(Date.now() + 12 * HOUR);
});

test("S4: after the log-out Back shows nothing of anybody", async ({ browser }) => {
  const context = await browser.newContext({ storageState: { cookies: [], origins: [] } });
  const page = await context.newPage();
  await page.goto("/");
  await page.getByRole("button", { name: "Look as Coach Lark" }).click();
  await page.waitForURL("**/students");
  const alias = withDemo((db) =>
    db.sqlite.prepare<[], string>("SELECT alias FROM student WHERE id = 's02'").pluck().get(),
  );
  await page.goto("/students/s02");
  await expect(page.locator("body")).toContainText(alias ?? "-");
  const status = await page.evaluate(async () => (await fetch("/api/sign-out", { method: "POST" })).status);
  expect(status).toBe(200);
  await page.goto("/sign-in");
  await page.goBack();
  await page.waitForURL("**/sign-in**");
  await expect(page.locator("body")).not.toContainText(alias ?? "-");
  await context.close();
});

const HOSTILE = [
  ...[
    "//evil.example",
    "/\\evil.example",
    "\\\\evil.example",
    "///evil.example",
    "http://evil.example/",
    "https:evil.example",
  ],
  ...[
    "javascript:alert(1)",
    "JaVaScRiPt:alert(1)",
    "data:text/html,x",
    " //evil.example",
    "\t//evil.example",
    "/\t/evil.example",
  ],
  ...[
    "/\n/evil.example",
    "/students\r\nSet-Cookie: a=b",
    "@evil.example",
    "/@evil.example",
    "/students#//evil",
    "évil.example",
  ],
  ...["/students?to=http://evil.example", "/%0d%0aSet-Cookie:a=b", "/\u2044evil.example", "mailto:x@evil.example"],
];

test("S8: a log-in leads to a path of our own and to nothing else", async () => {
  const { cookie } = await signIn(EMAIL);
  for (const to of HOSTILE) {
    const { status, location, setCookies } = await signIn(EMAIL, { to, sent: cookie });
    const { origin } = new URL(location, `http://${host}`);
    expect([to, status, origin, location.startsWith("/") && !location.startsWith("//")]).toEqual([
      to,
      303,
      `http://${host}`,
      true,
    ]);
    expect(setCookies.some((line) => line.startsWith("a="))).toBe(false);
    const page = await sendRaw("GET", `/sign-in?to=${encodeURIComponent(to)}`, {
      Host: host,
      cookie: "proofband-academy=demo",
    });
    expect(page.status).toBe(200);
    const [, kept = ""] = /name="to" value="([^"]*)"/.exec(page.body) ?? [];
    expect([to, kept.startsWith("/") && new URL(kept, `http://${host}`).host]).toEqual([to, host]);
  }
  expect((await signIn(EMAIL, { to: "/students/s01?club=iron" })).location).toBe("/students/s01?club=iron");
  console.log(`S8: ${HOSTILE.length} places to be led to, in the form and in the address`);
});

test("S6: whoever isn't there, is gone or mistypes is told the same", async () => {
  const told = async (email: string, password?: string) => {
    const headers = { ...OWN, cookie: "proofband-academy=demo", "Content-Type": "application/x-www-form-urlencoded" };
    const body = new URLSearchParams({ email, password: password ?? "not the password", to: "" }).toString();
    const answer = await sendRaw("POST", "/api/sign-in", headers, body);
    const kept = withDemo((db) => db.sqlite.prepare<[], number>("SELECT count(*) FROM auth_session").pluck().get());
    return {
      status: answer.status,
      kept,
      body: answer.body.replaceAll(email, "-").replaceAll(/nonce-[^']+|[2-9B-Z]{4}-[2-9B-Z]{4}/g, ""),
    };
  };
  const first = await told("stranger@demo.example");
  expect(first.status).toBe(401);
  expect(await told("dove@demo.example")).toEqual(first);
});
