import { lstatSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { DEMO_PASSWORD, DEMO_PEOPLE } from "@/app/_server/access/demo-people";
import { served } from "../e2e/served";
import { expect, test } from "../e2e/watched";
import { newDataFolder, type OtherServer, startOther } from "./other-server";
import { askTls, startTlsProxy, type TlsProxy } from "./tls-proxy";

// An own academy behind a proxy that ends TLS, by the one setting of README.md; P8 and H4 on the same server.

const FORM = "application/x-www-form-urlencoded";
const OWNER = { email: "owner@school.example", password: "a bucket of range balls" };
const body = (fields: Record<string, string>) => new URLSearchParams(fields).toString();

let server: OtherServer;
let tls: TlsProxy;
let origin = "";
let modes: string[] = [];
test.beforeAll(async () => {
  const data = newDataFolder();
  tls = await startTlsProxy("localhost");
  origin = tls.origin;
  // An academy is begun on this machine, before its address is stated. Nothing is left to the shell to keep shut.
  const first = await startOther(data, { shell: "umask 000" });
  const local = `http://127.0.0.1:${first.port}`;
  const fields = { name: "North Range", zone: "Europe/Berlin", ownerName: "Coach Lark", ...OWNER };
  const begun = await first.send("POST", "/api/start", { Origin: local, "Content-Type": FORM }, body(fields));
  expect(begun.status).toBe(303);
  modes = openModes(data);
  await first.stop("keep");
  server = await startOther(data, { origin, shell: "umask 000" });
  tls.behind(server.port);
});
test.afterAll(async () => {
  tls?.stop();
  await server?.stop();
});

/** Files and folders under a data folder that others than their owner may open. */
function openModes(data: string): string[] {
  const all = ["", ...(readdirSync(data, { recursive: true }) as string[])];
  expect(all.length).toBeGreaterThan(4);
  return all.flatMap((name) => {
    const { mode } = lstatSync(path.join(data, name));
    return (mode & 0o077) === 0 ? [] : [`${name} ${(mode & 0o777).toString(8)}`];
  });
}

const signIn = (headers: Record<string, string>, fields: Record<string, string> = OWNER) =>
  askTls(
    origin,
    "POST",
    "/api/sign-in",
    { Origin: origin, "Content-Type": FORM, ...headers },
    body({ to: "/students", ...fields }),
  );

test("behind TLS: cookies are bound to the host and secure, ways lead to the stated address, and http is ruled out", async ({
  browser,
  watch,
}) => {
  watch.provoked.push(new RegExp(`^outside: ${origin}/`));
  const { status, headers } = await signIn({});
  expect([status, headers.location]).toEqual([303, "/students"]);
  const lines = headers["set-cookie"] ?? [];
  expect(lines.length).toBe(2);
  for (const line of lines) {
    expect(line).toMatch(/^__Host-proofband-own\.(session_token|known)=/);
    for (const flag of [/; Secure/, /; HttpOnly/, /; SameSite=Lax/i, /; Path=\/(;|$)/]) expect(line).toMatch(flag);
    expect(line).not.toMatch(/Domain/i);
  }
  let asked = 0;
  for (const address of [
    "/",
    "/students",
    "/sign-in",
    "/no/such/page",
    "/api/health",
    "/students/",
    "/_next/static/none.js",
  ]) {
    const answer = await askTls(origin, "GET", address);
    asked++;
    expect([address, answer.headers["strict-transport-security"]]).toEqual([address, "max-age=31536000"]);
    expect(new URL(answer.headers.location ?? "/", origin).origin).toBe(origin);
    expect(answer.body).not.toContain("127.0.0.1");
  }
  const plain = await server.send("GET", "/sign-in");
  expect(plain.headers["strict-transport-security"]).toBeUndefined();

  const context = await browser.newContext({ ignoreHTTPSErrors: true, storageState: { cookies: [], origins: [] } });
  const page = await context.newPage();
  await page.goto(`${origin}/students`);
  await page.getByLabel("E-mail address").fill(OWNER.email);
  await page.getByLabel("Password").fill(OWNER.password);
  await page.getByRole("button", { name: "Sign in" }).click();
  // Reached from elsewhere, an owner adds the second step before anything else.
  await page.waitForURL(`${origin}/account/second-step`);
  const cookies = await context.cookies();
  expect(
    cookies.filter(({ name }) => name.startsWith("__Host-")).every(({ secure, httpOnly }) => secure && httpOnly),
  ).toBe(true);
  expect(await page.evaluate(() => document.cookie)).toBe("");
  await context.close();
  console.log(`TLS: ${lines.length} cookies, ${asked} addresses, one log-in in the browser`);
});

test("behind TLS: what is said of being forwarded is not believed, and other names and schemes are refused", async () => {
  const cases: readonly (readonly [string, number, Record<string, string>])[] = [
    ["forged forwarded host", 303, { "X-Forwarded-Host": "evil.example", Forwarded: "host=evil.example;proto=http" }],
    [
      "forged forwarded scheme",
      303,
      { "X-Forwarded-Proto": "http", "X-Forwarded-Port": "80", "X-Real-Ip": "127.0.0.1" },
    ],
    ["another host", 403, { Host: "evil.example" }],
    ["another host, forwarded as ours", 403, { Host: "evil.example", "X-Forwarded-Host": new URL(origin).host }],
    ["another page", 403, { Origin: "https://evil.example" }],
    ["our name by http", 403, { Origin: origin.replace("https:", "http:") }],
    ["another port", 403, { Origin: "https://localhost:1" }],
    ["no page at all", 403, { Origin: "null" }],
  ];
  for (const [name, status, headers] of cases) {
    const answer = await signIn(headers);
    expect(`${name} ${answer.status}`).toBe(`${name} ${status}`);
    expect(`${answer.headers.location ?? ""} ${answer.headers["set-cookie"] ?? ""}`).not.toContain("evil");
    for (const line of answer.headers["set-cookie"] ?? []) expect(line).toMatch(/^__Host-.*; Secure/);
  }
  const door = await askTls(origin, "POST", "/api/door/import", { "X-Forwarded-For": "127.0.0.1" }, "student,date\n");
  expect(door.status).toBe(403);
  console.log(`TLS: ${cases.length + 1} forged requests`);
});

test("README.md says that setting, and what follows from it", () => {
  const readme = readFileSync(path.join(served.root, "README.md"), "utf8");
  expect(readme).toMatch(/\*\*Behind a TLS proxy\*\*.*PROOFBAND_ORIGIN=https:\/\/\S+ npm start/);
  expect(readme).toMatch(/Host header/);
});

test("P8: with a shell that shuts nothing, data and secret are their owner’s alone, and none is answered", async () => {
  expect(modes).toEqual([]);
  expect(openModes(server.data)).toEqual([]);
  const names = readdirSync(server.data, { recursive: true }) as string[];
  const prefixes = [
    "/",
    "/data/",
    "/..%2f",
    "/%2e%2e/",
    "/_next/",
    "/_next/static/..%2f..%2f",
    "/_next/static/%2e%2e/%2e%2e/",
    "/public/",
    `/${encodeURIComponent(server.data)}/`,
  ];
  let asked = 0;
  for (const name of [...names, "package.json", ".next/BUILD_ID", "server.lock", ".env", "db/schema.ts"])
    for (const prefix of prefixes) {
      const { status, body: text } = await server.send("GET", `${prefix}${name}`);
      asked++;
      expect([prefix + name, status >= 300]).toEqual([prefix + name, true]);
      expect(text).not.toMatch(/SQLite format 3|"version": "0\.1\.0"/);
    }
  console.log(`P8: ${names.length} files and folders, ${asked} addresses`);
});

test("H4: an own academy has no log-in of the demo, no source map and no route for tests", async () => {
  for (const { email } of DEMO_PEOPLE) {
    expect((await signIn({}, { email, password: DEMO_PASSWORD })).status).toBe(401);
    expect((await signIn({ cookie: "proofband-academy=demo" }, { email, password: DEMO_PASSWORD })).status).not.toBe(
      303,
    );
  }
  expect(readdirSync(server.data)).not.toContain("demo");
  const folder = path.join(served.root, ".next", "static");
  const files = readdirSync(folder, { recursive: true }) as string[];
  expect(files.filter((name) => name.endsWith(".map"))).toEqual([]);
  const scripts = files.filter((name) => name.endsWith(".js"));
  for (const name of scripts) {
    expect(readFileSync(path.join(folder, name), "utf8")).not.toMatch(/sourceMappingURL/);
    expect((await server.send("GET", `/_next/static/${name}.map`)).status).toBe(404);
  }
  const manifest = JSON.parse(readFileSync(path.join(served.root, ".next", "app-path-routes-manifest.json"), "utf8"));
  const routes = Object.values(manifest as Record<string, string>);
  expect(routes.filter((each) => /test|debug|seed|playground|reset/i.test(each))).toEqual([]);
  const sign = await askTls(origin, "GET", "/sign-in");
  expect(sign.body).not.toContain(DEMO_PASSWORD);
  console.log(`H4: ${DEMO_PEOPLE.length * 2} log-ins of the demo, ${scripts.length} scripts, ${routes.length} routes`);
});
