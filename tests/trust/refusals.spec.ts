import { statSync } from "node:fs";
import path from "node:path";
import { expect, expectAccessible, test } from "../e2e/watched";
import { FULL } from "../many-cases";
import { digestData } from "./data-digest";
import { copyOfDemo, type OtherServer, startOther } from "./other-server";
import type { Answer } from "./raw-request";
import { REFUSALS, type RefusalCase } from "./refusal-cases";
import { ours } from "./refusal-senders";

// F1: what a refusal says, on a production server of its own, whose files may not grow by more than a few megabytes.

let server: OtherServer;
test.beforeAll(async () => {
  const data = await copyOfDemo();
  const blocks = Math.ceil(statSync(path.join(data, "demo", "proofband.db")).size / 512) + 4096;
  server = await startOther(data, { shell: `ulimit -f ${blocks}` });
});
test.afterAll(() => server?.stop());

const REFERENCE = /[2-9B-Z]{4}-[2-9B-Z]{4}/;
/** What tells how the program is built. */
const INSIDE =
  /node_modules|\bat \w+ \(|sqlite|\bSELECT\b|\bno such (?:table|column)|\.[jt]sx?:\d|next\.js|Internal Server Error|digest|\/tmp\//i;

function linesOf(reference: string): string[] {
  return server
    .log()
    .split("\n")
    .filter((line) => line.includes(reference));
}

async function faultsOf(one: RefusalCase, answer: Answer): Promise<string[]> {
  const { body, status } = answer;
  const text = body.replaceAll(/<style>.*?<\/style>|<script.*?<\/script>/gs, "");
  const reference =
    REFERENCE.exec(
      one.kind === "page" ? text : String((JSON.parse(body) as { reference?: string }).reference ?? ""),
    )?.[0] ?? "";
  await expect
    .poll(() => linesOf(reference).length, { timeout: 3000 })
    .toBeGreaterThan(0)
    .catch(() => undefined);
  const lines = linesOf(reference);
  const wanted: [string, boolean][] = [
    [`status ${status}`, status === one.status],
    ["cause", one.says.test(text)],
    ["saved or not", one.saved.test(text)],
    ["next step", one.next.test(text)],
    ["reference", reference !== ""],
    [
      `one line of the log: ${lines.join(" | ")}`,
      lines.length === 1 && lines[0]?.includes(` refused ${reference} ${one.status} `) === true,
    ],
    [`inside: ${INSIDE.exec(text)?.[0]}`, !INSIDE.test(text)],
    [
      "whole page",
      one.kind === "data" || (/<main[\s>]/.test(text) && /<h1[\s>]/.test(text) && /<html lang="/.test(text)),
    ],
    [
      "sealed",
      answer.headers["content-security-policy"] !== undefined &&
        /no-store/.test(String(answer.headers["cache-control"])),
    ],
  ];
  return wanted.filter(([, holds]) => !holds).map(([what]) => `${one.name}: ${what}`);
}

test("F1: each refusal has its status, and says why, whether anything was saved, what to do, and where the log has it", async ({
  page,
}) => {
  test.setTimeout(240_000);
  const before = await digestData(server.data);
  const failures: string[] = [];
  const pages: [string, string][] = [];
  for (const one of REFUSALS) {
    const answer = await one.send(server);
    failures.push(...(await faultsOf(one, answer)));
    if (one.kind === "page" && !answer.body.includes("/_next/")) pages.push([one.name, answer.body]);
  }
  expect(failures).toEqual([]);
  // Drafts were kept on purpose, and tries counted.
  const [then, now] = [before, await digestData(server.data)].map((text) => {
    const demo = (JSON.parse(text) as { demo: Record<string, unknown> }).demo;
    return Object.fromEntries(Object.entries(demo).filter(([table]) => !["draft", "sign_in_try"].includes(table)));
  });
  expect(now).toEqual(then);
  for (const [name, body] of pages) {
    await page.setContent(body);
    await test.step(name, () => expectAccessible(page));
  }
  console.log(`F1: ${REFUSALS.length} refusals, ${pages.length} pages looked at for accessibility`);
});

test("F1: no line of the log names anybody, holds a token or what was typed", async () => {
  const log = server.log();
  expect(log).toContain(" refused ");
  for (const word of [
    "wren",
    "lark",
    "linnet",
    "demo.example",
    "half a name",
    "not the password",
    "session_token",
    "s31",
    "Bearer",
  ])
    expect(log.toLowerCase()).not.toContain(word.toLowerCase());
});

// Each refusal is a page: on a machine with other work to do 900 of them take minutes.
const [FLOOD, SLOWED] = FULL ? [900, 200] : [400, 100];

test("J8: a flood of one log-in is slowed, a page of another is not", async () => {
  test.setTimeout(300_000);
  const mine = ours(server);
  const other = await server.send(
    "POST",
    "/api/sign-in",
    { ...mine, cookie: "proofband-academy=demo", "Content-Type": "application/x-www-form-urlencoded" },
    new URLSearchParams({
      email: "lark@demo.example",
      password: "two larches in the wind",
      to: "/students",
    }).toString(),
  );
  expect(other.status).toBe(303);
  const cookie = [
    "proofband-academy=demo",
    ...(other.headers["set-cookie"] ?? []).map((line) => line.split(";")[0]),
  ].join("; ");
  const flood = Array.from({ length: FLOOD }, () => server.send("GET", "/students", mine));
  const waits: number[] = [];
  for (let n = 0; n < 5; n++) {
    const from = performance.now();
    expect((await server.send("GET", "/students", { ...mine, cookie })).status).toBe(200);
    waits.push(performance.now() - from);
  }
  const answers = await Promise.all(flood);
  const slowed = answers.filter(({ status }) => status === 429);
  expect(slowed.length).toBeGreaterThan(SLOWED);
  for (const { headers, body } of slowed) {
    expect(Number(headers["retry-after"])).toBeGreaterThan(0);
    expect(body).toContain("your account is not locked");
  }
  expect(answers.every(({ status }) => status === 200 || status === 429)).toBe(true);
  console.log(
    `J8: ${answers.length} requests of one log-in, ${slowed.length} slowed; another’s pages took ${waits.map(Math.round).join(", ")} ms`,
  );
  // It comes back by itself.
  await expect.poll(async () => (await server.send("GET", "/students", mine)).status, { timeout: 20_000 }).toBe(200);
});
