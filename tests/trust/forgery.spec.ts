import { DOOR } from "@/app/_server/door/origin";
import { builtActions, builtRoutes } from "../e2e/routes";
import { served } from "../e2e/served";
import { expect, test } from "../e2e/watched";
import { atOnce } from "./at-once";
import { digestData } from "./data-digest";
import { sendRaw } from "./raw-request";

// S1: a change that didn't come from one of our pages is refused. S2: a change can't be made by reading.

const host = `127.0.0.1:${served.port}`;
const REFUSED = "This request did not come from Proofband, so nothing was changed.";
/** The same to a program, as data. */
const AT_DOOR = "This address answers on this machine only, so nothing was changed.";

const FORGED: readonly [string, Record<string, string>][] = [
  ["foreign origin", { Host: host, Origin: "http://elsewhere.invalid" }],
  ["opaque origin", { Host: host, Origin: "null" }],
  ["our name on another port", { Host: host, Origin: "http://127.0.0.1:1" }],
  ["our name by another scheme", { Host: host, Origin: `https://${host}` }],
  ["opaque origin from elsewhere", { Host: host, Origin: "null", "Sec-Fetch-Site": "cross-site" }],
  ["no origin", { Host: host }],
  ["no origin, from a neighbour", { Host: host, "Sec-Fetch-Site": "same-site" }],
  [
    "foreign origin that forwards for itself",
    {
      Host: host,
      Origin: "http://elsewhere.invalid",
      "X-Forwarded-Host": "elsewhere.invalid",
      "X-Forwarded-Proto": "http",
      Forwarded: "host=elsewhere.invalid",
    },
  ],
  ["foreign host with its own origin", { Host: "elsewhere.invalid", Origin: "http://elsewhere.invalid" }],
];

function changes(): { readonly path: string; readonly action: Record<string, string> }[] {
  const routes = builtRoutes().map((route) => route.path);
  const page = builtRoutes().find((route) => route.kind === "page")?.path ?? "/";
  return [
    ...routes.map((path) => ({ path, action: {} })),
    ...builtActions().map((id) => ({ path: page, action: { "Next-Action": id } })),
  ];
}

test("S1: forged origins and hosts get 403 in words, and no row is written", async () => {
  test.setTimeout(300_000);
  // Filling in the addresses puts an upload and an import into the demo.
  const all = changes();
  const before = await digestData();
  const sent = FORGED.flatMap(([name, headers]) => all.map((change) => ({ ...change, name, headers })));
  const failures = await atOnce(sent, async ({ name, headers, path, action }) => {
    const answer = await sendRaw("POST", path, { ...headers, ...action, "Content-Type": "text/plain" }, "[]");
    // A program sends no origin: at its door it is asked for a key, in tests/trust/door.spec.ts.
    if (name === "no origin" && path.startsWith(DOOR) && [401, 405].includes(answer.status)) return [];
    const said = path.startsWith(DOOR) ? JSON.parse(answer.body).problem === AT_DOOR : answer.body.includes(REFUSED);
    const refused = answer.status === 403 && said;
    return refused ? [] : [`${name}: POST ${path} ${answer.status}`];
  });
  console.log(`S1: ${FORGED.length} forgeries x ${all.length} changes`);
  expect(failures.flat()).toEqual([]);
  expect(await digestData()).toBe(before);
});

test("S1: a forged host is refused when reading too, whatever it forwards", async () => {
  for (const name of ["elsewhere.invalid", `elsewhere.invalid:${served.port}`, `${host}.elsewhere.invalid`]) {
    for (const forwarded of [{}, { "X-Forwarded-Host": host }] as Record<string, string>[]) {
      const answer = await sendRaw("GET", "/api/health", { Host: name, ...forwarded });
      expect(`${name} ${answer.status}`).toBe(`${name} 403`);
    }
  }
  const ours = await sendRaw("GET", "/api/health", { Host: host, "X-Forwarded-Host": "elsewhere.invalid" });
  expect(ours.status).toBe(200);
});

test("S1: without an origin only the browser's word that it is the same one lets a change pass", async () => {
  const passes = await sendRaw("POST", "/api/health", { Host: host, "Sec-Fetch-Site": "same-origin" });
  expect(passes.status).toBe(405);
  const own = await sendRaw("POST", "/api/health", { Host: host, Origin: `http://${host}` });
  expect(own.status).toBe(405);
});

test("S1: the refusal is a whole page without script", async ({ browser, watch }) => {
  watch.provoked.push(/403/);
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.setContent(`<form method="post" action="${served.address}/api/health"><button>go</button></form>`);
  await page.getByRole("button").click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Not from Proofband");
  await expect(page.getByText(REFUSED)).toBeVisible();
  await context.close();
});

test("S2: a change replayed as GET or HEAD is 405 and writes nothing", async () => {
  test.setTimeout(300_000);
  const all = changes();
  const before = await digestData();
  let replayed = 0;
  const failures = await atOnce(all, async ({ path, action }) => {
    const isAction = Object.keys(action).length > 0;
    // A page and a download are there to be read; what only changes is not.
    if (!isAction && (await sendRaw("GET", path, { Host: host })).status !== 405) return [];
    const wrong: string[] = [];
    for (const method of ["GET", "HEAD"]) {
      replayed++;
      const answer = await sendRaw(method, path, { Host: host, Origin: `http://${host}`, ...action });
      if (answer.status !== 405) wrong.push(`${method} ${path}: ${answer.status}`);
    }
    return wrong;
  });
  expect(replayed).toBeGreaterThan(40);
  const invented = await sendRaw("GET", "/", { Host: host, "Next-Action": "00".repeat(21) });
  console.log(`S2: ${replayed + 1} replays`);
  expect(failures.flat()).toEqual([]);
  expect(invented.status).toBe(405);
  expect(await digestData()).toBe(before);
});
