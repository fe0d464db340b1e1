import { readFileSync } from "node:fs";
import path from "node:path";
import { MATRIX, type RowKey } from "@/app/_server/access/matrix";
import { served } from "../e2e/served";
import { expect, test } from "../e2e/watched";
import { FULL } from "../many-cases";
import { type Asker, bringAskers, builtCases, LARKS, may, WRENS, wrong } from "./access-askers";
import { askUntilHeard, atOnce } from "./at-once";
import { host, withDemo } from "./demo-roles";
import { sendRaw } from "./raw-request";

// A1 and A2 against the build: each row of the matrix as each role, by raw requests. They only read, so they share the workers.

test.describe.configure({ mode: "parallel" });

let askers: readonly Asker[] = [];
test.beforeAll(async () => {
  askers = await bringAskers();
});

async function ask(method: string, address: string, cookie: string, headers: Record<string, string> = {}) {
  const answer = await askUntilHeard(() => sendRaw(method, address, { Host: host, cookie, ...headers }));
  const location = answer.headers.location ?? "";
  return { status: answer.status, location: location.replace(`http://${host}`, ""), body: answer.body };
}

test("A1: each built page, route and action has its row, and the log-in library answers nothing itself", async () => {
  const read = (file: string) => JSON.parse(readFileSync(path.join(served.root, ".next", file), "utf8"));
  const patterns = Object.entries(read("app-path-routes-manifest.json") as Record<string, string>);
  const actions = Object.values(
    (
      read("server/server-reference-manifest.json") as {
        node: Record<string, { exportedName: string; filename: string }>;
      }
    ).node,
  ).map(({ exportedName, filename }) => {
    const folder = filename.replace(/^app/, "").replace(/\/[^/]+$/, "");
    return `${folder.replace(/\/\([^)]+\)/g, "")} ${exportedName}`;
  });
  const rows = Object.keys(MATRIX);
  const unlisted = patterns
    .filter(([entry]) => !/^\/_|^\/(favicon|icon)/.test(entry))
    .filter(([entry, pattern]) =>
      entry.endsWith("/page") ? !rows.includes(pattern) : !rows.some((row) => row.split(" ")[1] === pattern),
    );
  expect(unlisted).toEqual([]);
  expect(actions.filter((action) => !rows.includes(action))).toEqual([]);
  expect(rows.filter((row) => /^\/\S* \S+$/.test(row) && !actions.includes(row))).toEqual([]);
  const endpoints = [
    "sign-in/email",
    "sign-up/email",
    "get-session",
    "list-sessions",
    "update-user",
    "delete-user",
    "ok",
  ];
  endpoints.push("error", "two-factor/enable", "two-factor/verify-totp", "reset-password/x", "callback/x", "");
  for (const endpoint of endpoints)
    for (const method of ["GET", "POST"]) {
      const headers = { Origin: `http://${host}`, cookie: askers.find(({ name }) => name === "wren")?.cookie ?? "" };
      const { status } = await ask(method, `/api/auth/${endpoint}`, headers.cookie, headers);
      expect([method, endpoint, status]).toEqual([method, endpoint, endpoint === "" ? status : 404]);
    }
  console.log(
    `A1: ${patterns.length} addresses, ${actions.length} actions, ${endpoints.length * 2} endpoints of the library`,
  );
});

test("A2: each page, download and table as each role is what the matrix says", async () => {
  test.setTimeout(300_000);
  const alias = withDemo((db) =>
    db.sqlite.prepare<[string], string>("SELECT alias FROM student WHERE id = ?").pluck().get(WRENS),
  );
  const all = builtCases().flatMap((one) => askers.map((asker) => ({ one, asker })));
  const failures = await atOnce(all, async ({ one, asker }) => {
    const answer = await ask("GET", one.address, asker.cookie);
    const fault = wrong(one, asker, one.student, answer);
    const names = answer.status >= 400 && answer.body.includes(alias ?? "-");
    return [...(fault ? [fault] : []), ...(names ? [`${one.address} names the student`] : [])];
  });
  console.log(`A2: ${all.length} addresses and roles`);
  expect(failures.flat()).toEqual([]);
});

test("A2: a coach's own student answers where another's doesn't", async () => {
  test.setTimeout(300_000);
  const session = withDemo((db) =>
    db.sqlite.prepare<[string], string>("SELECT id FROM session WHERE student_id = ?").pluck().get(LARKS),
  );
  const parts: Record<string, string> = { studentId: LARKS, sessionId: session ?? "", fundamental: "hinge" };
  const all = (Object.keys(MATRIX) as RowKey[]).flatMap((row) => {
    const pattern = row.startsWith("GET ") ? row.slice(4) : row;
    if (MATRIX[row].of !== "student" || /\s|assignmentId|eventId|readBackId|requestId/.test(pattern)) return [];
    const address = pattern.replace(/\[(\w+)\]/g, (_, part: string) => parts[part] ?? "");
    return askers.map((asker) => ({ one: { row, address, student: LARKS }, asker }));
  });
  const failures = await atOnce(all, async ({ one, asker }) =>
    wrong(one, asker, LARKS, await ask("GET", one.address, asker.cookie)),
  );
  console.log(`A2: ${all.length} addresses of a student of another coach and roles`);
  expect(failures.filter((each) => each !== null)).toEqual([]);
});

/** Ways of asking for the same address. On a push each refusal is asked for in one of them, by turns; TRUST.md has A3 nightly. */
const WAYS: readonly ((address: string) => readonly [string, string, Record<string, string>])[] = [
  (address) => ["GET", address, { RSC: "1" }],
  (address) => ["HEAD", address, {}],
  (address) => ["GET", `/${address}`, {}],
  (address) => ["GET", address.replace("/s", "/%73"), {}],
  (address) => ["GET", `/.${address}`, {}],
];

test("A3: what is refused is refused as a stream, as HEAD and written otherwise", async () => {
  test.setTimeout(300_000);
  const refusals = builtCases().flatMap((one) =>
    askers
      .filter(({ name }) => ["nobody", "owl", "lark", "linnet"].includes(name))
      .filter((asker) => MATRIX[one.row].of !== "nobody" && (asker.reach === "out" || !may(one, asker, one.student)))
      .map((asker) => ({ one, asker })),
  );
  const all = refusals.flatMap(({ one, asker }, at) =>
    WAYS.filter((_, way) => FULL || way === at % WAYS.length).map((way) => ({ one, asker, way: way(one.address) })),
  );
  const failures = await atOnce(all, async ({ one, asker, way: [method, address, headers] }) => {
    const first = await ask(method, address, asker.cookie, headers);
    // The framework gives a stream an address of its own.
    const { status, location, body } = first.location.includes("_rsc")
      ? await ask(method, first.location, asker.cookie, headers)
      : first;
    // Another way of writing it may lead to the plain one, which is asked about above.
    const led = status >= 300 && status < 400 && address !== one.address && !location.startsWith("//");
    // Whoever tries links is slowed, whatever they would open.
    const isSlowed = status === 429 && one.row.includes("[token]");
    const refused = [401, 404].includes(status) || isSlowed || location.includes("/sign-in") || led;
    const streamed = status === 200 && /NEXT_HTTP_ERROR_FALLBACK;404|NEXT_REDIRECT;[^"]*sign-in/.test(body);
    return refused || streamed ? [] : [`${asker.name}: ${method} ${address} ${status} ${location}`];
  });
  expect(all.length).toBeGreaterThanOrEqual(refusals.length);
  console.log(`A3: ${all.length} of ${refusals.length * WAYS.length} refusals asked for otherwise`);
  expect(failures.flat()).toEqual([]);
});
