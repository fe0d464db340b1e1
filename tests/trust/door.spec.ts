import http from "node:http";
import { DOOR } from "@/app/_server/door/origin";
import { served } from "../e2e/served";
import { expect, expectAccessible, test } from "../e2e/watched";
import { digestData } from "./data-digest";
import { sendRaw } from "./raw-request";

// The door of other programs: S1 and J7 where there is no cookie, and no origin.

const host = `127.0.0.1:${served.port}`;
const address = `${DOOR}import`;

test("a key is made on a page, shown once, and revoked there; behind it a file is only read without confirm", async ({
  page,
}) => {
  await page.goto("/settings/keys");
  await page.getByRole("button", { name: "Make a key" }).click();
  await expect(page.locator("main [role=alert]")).toContainText("Nothing was made");
  await page.getByLabel("Name of the program or device").fill("The bay’s phone");
  await page.getByRole("button", { name: "Make a key" }).click();
  const key = (await page.locator("code").textContent()) ?? "";
  expect(key).toMatch(/^pbk_/);
  await expectAccessible(page);
  await page.reload();
  await expect(page.locator("code")).toHaveCount(0);

  const bearer = { Host: host, Authorization: `Bearer ${key}` };
  const file = "student,date,club,swing,fundamental,value\nNobody,2026-01-05,7-iron,1,hinge,88\n";
  const read = await sendRaw("POST", `${address}?file=one.csv`, bearer, file);
  expect(read.status).toBe(200);
  expect(JSON.parse(read.body)).toMatchObject({ state: "preview", saved: false, rows: { all: 1, ready: 0 } });
  expect((await sendRaw("GET", `${address}/imported-for-the-tests`, bearer)).status).toBe(200);

  // More than the framework passes on by itself.
  const row = `Nobody,2026-01-05,7-iron,1,hinge,88,${"n".repeat(190)}\n`;
  const large = `student,date,club,swing,fundamental,value,note\n${row.repeat(60_000)}`;
  const whole = await sendRaw("POST", `${address}?file=large.csv`, bearer, large);
  expect([whole.status, JSON.parse(whole.body).rows?.all]).toEqual([200, 60_000]);
  const over = await sendRaw("POST", `${address}?file=over.csv`, bearer, "x".repeat(33 * 1024 * 1024));
  expect([over.status, JSON.parse(over.body).problem]).toEqual([413, "The file is over 32 MB."]);

  await page.getByRole("button", { name: "Revoke “The bay’s phone”" }).click();
  const line = page.getByRole("row", { name: /The bay’s phone/ }).first();
  await expect(line.getByRole("cell", { name: /^revoked/ })).toBeVisible();
  const after = await sendRaw("POST", address, bearer, file);
  expect([after.status, JSON.parse(after.body).problem]).toEqual([401, "This key is not in force."]);
});

test("S1: no key, a wrong one, a foreign host or page, and a forwarded request: refused in words, no row", async () => {
  const before = await digestData();
  const wrong = { Authorization: `Bearer pbk_${"x".repeat(43)}` };
  const cases: readonly (readonly [string, number, Record<string, string>])[] = [
    ["no key", 401, { Host: host }],
    ["wrong key", 401, { Host: host, ...wrong }],
    ["foreign host", 403, { Host: "elsewhere.invalid", ...wrong }],
    ["foreign page", 403, { Host: host, Origin: "http://elsewhere.invalid", ...wrong }],
    ["a page without an origin", 403, { Host: host, "Sec-Fetch-Site": "cross-site", ...wrong }],
    ["past another server", 403, { Host: host, "X-Forwarded-For": "203.0.113.9", ...wrong }],
    ["past another server, hidden", 403, { Host: host, "X-Forwarded-For": "127.0.0.1, 203.0.113.9", ...wrong }],
    ["forged name", 403, { Host: "elsewhere.invalid", "X-Forwarded-Host": host, ...wrong }],
  ];
  for (const [name, status, headers] of cases) {
    const answer = await sendRaw("POST", address, headers, "student,date\n");
    expect(`${name} ${answer.status}`).toBe(`${name} ${status}`);
    expect(answer.body).not.toMatch(/node_modules|at Object|sqlite/i);
    expect(Object.keys(JSON.parse(answer.body))).toEqual(["problem", "do", "reference"]);
  }
  for (const method of ["GET", "HEAD", "PUT", "DELETE"])
    expect(`${method} ${(await sendRaw(method, address, { Host: host, ...wrong })).status}`).toBe(`${method} 405`);
  expect(await digestData()).toBe(before);
});

test("J7: a body over the limit is refused by its length, and one that breaks off leaves nothing", async () => {
  const before = await digestData();
  const stated = await new Promise<number>((resolve, reject) => {
    const body = Buffer.alloc(40 * 1024 * 1024, "student,date\n");
    const headers = { Host: host, Authorization: "Bearer pbk_x", "Content-Length": String(body.length) };
    const request = http.request({ host: "127.0.0.1", port: served.port, method: "POST", path: address, headers });
    request.on("response", (response) => {
      resolve(response.statusCode ?? 0);
      request.destroy();
    });
    request.on("error", reject);
    request.end(body);
  });
  // The outermost door refuses it by what it says of itself, whoever sends it; the framework lets go of the body first.
  expect(stated).toBe(413);
  await new Promise<void>((resolve) => {
    const headers = { Host: host, Authorization: "Bearer pbk_x", "Content-Length": "1000" };
    const request = http.request({ host: "127.0.0.1", port: served.port, method: "POST", path: address, headers });
    request.on("error", () => undefined);
    request.on("close", () => resolve());
    request.write("student,da");
    setTimeout(() => request.destroy(), 100);
  });
  expect((await sendRaw("GET", "/api/health", { Host: host })).status).toBe(200);
  expect(await digestData()).toBe(before);
});
