import { readdirSync } from "node:fs";
import path from "node:path";
import { builtRoutes } from "../e2e/routes";
import { served } from "../e2e/served";
import { expect, test } from "../e2e/watched";
import { atOnce } from "./at-once";
import { type Answer, sendRaw } from "./raw-request";

// J6: every answer bears the policy and the other headers.

const host = { Host: `127.0.0.1:${served.port}` };

function staticFiles(): string[] {
  const folder = path.join(served.root, ".next", "static");
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => `/_next/static/${path.relative(folder, path.join(entry.parentPath, entry.name))}`);
}

function lacks(answer: Answer): string[] {
  const policy = String(answer.headers["content-security-policy"] ?? "");
  const isPage = /'nonce-[A-Za-z0-9+/]{22}=='/.test(policy) && policy.includes("'strict-dynamic'");
  const wanted: [string, boolean][] = [
    ["nonce, or no script at all", isPage || policy.includes("script-src 'none'")],
    ["object-src", policy.includes("object-src 'none'")],
    ["base-uri", policy.includes("base-uri 'none'")],
    ["frame-ancestors", policy.includes("frame-ancestors 'none'")],
    ["form-action", policy.includes("form-action 'self'")],
    ["nosniff", answer.headers["x-content-type-options"] === "nosniff"],
    ["no-referrer", answer.headers["referrer-policy"] === "no-referrer"],
    ["no-store", /\bno-store\b/.test(String(answer.headers["cache-control"]))],
    ["noindex", /\bnoindex\b/.test(String(answer.headers["x-robots-tag"]))],
    ["nothing about the program", answer.headers["x-powered-by"] === undefined && answer.headers.server === undefined],
  ];
  return wanted.filter(([, there]) => !there).map(([name]) => name);
}

test("J6: every page, route, file, redirect and refusal bears every header", async () => {
  test.setTimeout(300_000);
  const paths = builtRoutes().map((route) => route.path);
  const odd = [
    "/no/such/page",
    "/students/",
    "//elsewhere",
    "/%E0%A4%A",
    "/_next/static/none.js",
    "/_next/image?url=x",
  ];
  const requests: [string, string][] = [
    ...[...paths, ...odd, ...staticFiles()].map((each): [string, string] => ["GET", each]),
    ...["HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE"].flatMap((method) =>
      paths.map((each): [string, string] => [method, each]),
    ),
  ];
  const failures = await atOnce(requests, async ([method, each]) => {
    const answer = await sendRaw(method, each, host);
    const missing = lacks(answer);
    return [
      ...(missing.length > 0 ? [`${method} ${each} (${answer.status}): no ${missing.join(", ")}`] : []),
      ...(answer.status >= 500 ? [`${method} ${each}: ${answer.status}`] : []),
    ];
  });
  console.log(`J6: ${requests.length} requests, all routes of the build`);
  expect(failures.flat()).toEqual([]);
});

test("J6: two pages never bear the same nonce", async () => {
  const nonces = new Set<string>();
  for (let asked = 0; asked < 20; asked++) {
    const answer = await sendRaw("GET", "/no/such/page", host);
    nonces.add(/'nonce-([^']+)'/.exec(String(answer.headers["content-security-policy"]))?.[1] ?? "");
  }
  expect(nonces.size).toBe(20);
});

test("J6: what is planted in a page is blocked: scripts, handlers, pictures, another base, a form to elsewhere", async ({
  page,
  watch,
}) => {
  watch.provoked.push(/Content Security Policy/i, /status of 404/, /outside: https:\/\/elsewhere\.invalid/);
  const ran = "document.title='ran'";
  const planted = [
    `<script>${ran}</script><img src="data:," onerror="${ran}">`,
    '<script src="https://elsewhere.invalid/x.js"></script><img src="https://elsewhere.invalid/x.png">',
    '<base href="https://elsewhere.invalid/"><object data="https://elsewhere.invalid/x"></object>',
    `<a href="javascript:${ran}">planted link</a>`,
    '<form method="post" action="https://elsewhere.invalid/"><button>planted form</button></form>',
  ].join("");
  await page.route("**/no/such/page", async (route) => {
    const response = await route.fetch();
    // Our own scripts would tidy the plants away before they are looked at.
    const bare = (await response.text()).replaceAll(/<script\b.*?<\/script>/gs, "");
    await route.fulfill({ response, body: bare.replace("<main", `${planted}<main`) });
  });
  const blocked: string[] = [];
  await page.exposeFunction("tellBlocked", (what: string) => blocked.push(what));
  await page.addInitScript(() => {
    const tell = (window as unknown as { tellBlocked: (what: string) => void }).tellBlocked;
    document.addEventListener("securitypolicyviolation", (event) => {
      tell(`${event.effectiveDirective} ${event.blockedURI}`);
    });
  });
  await page.goto("/no/such/page");
  await page.getByRole("link", { name: "planted link" }).dispatchEvent("click");
  await page.getByRole("button", { name: "planted form" }).dispatchEvent("click");
  await expect
    .poll(() => [...new Set(blocked)].sort())
    .toEqual([
      "base-uri https://elsewhere.invalid/",
      "form-action https://elsewhere.invalid/",
      "img-src https://elsewhere.invalid/x.png",
      "object-src https://elsewhere.invalid",
      "script-src-attr inline",
      "script-src-elem https://elsewhere.invalid/x.js",
      "script-src-elem inline",
    ]);
  expect(await page.title()).not.toBe("ran");
});
