import { randomUUID } from "node:crypto";
import path from "node:path";
import type { BrowserContext, Page } from "playwright/test";
import { openDatabase } from "@/db/client";
import { sendRaw } from "../trust/raw-request";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

// Nothing that was typed is ever lost: reload, no connection, two windows, two presses, no scripts.

const STUDENT = "s31";
/** The form of a student who was added here: what is read first of one without a film is known. */
let FORM = "";
const KEPT = /^Kept (?:\d+ \w+, )?\d\d:\d\d$/;

function sessionsSaved(): number {
  const student = FORM.split("/")[2];
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"), "read");
  try {
    return Number(db.sqlite.prepare("SELECT count(*) FROM session WHERE student_id = ?").pluck().get(student));
  } finally {
    db.close();
  }
}

const status = (page: Page) => page.getByRole("status").first();
const cell = (page: Page, name: string) => page.locator(`[name="${name}"]`);
const save = (page: Page) => page.locator("button[type=submit].do");

async function stored(page: Page): Promise<string> {
  return page.evaluate(() => JSON.stringify(localStorage));
}

async function secondWindow(context: BrowserContext, address: string): Promise<Page> {
  const other = await context.newPage();
  await other.goto(address);
  return other;
}

test("the door of drafts answers what it can't keep in words, and keeps nothing of it", async () => {
  const host = `127.0.0.1:${served.port}`;
  const headers = { Host: host, Origin: `http://${host}`, "Content-Type": "application/json" };
  const whole = { draft: randomUUID(), form: "session-form", studentId: STUDENT, version: 0, writer: "w", turn: 1 };
  const send = (body: object | string) =>
    sendRaw("POST", "/api/drafts", headers, typeof body === "string" ? body : JSON.stringify(body));
  const rest = { entries: [], settles: "", act: "keep" };
  const answers = [
    await send("{"),
    await send({ ...whole, ...rest, entries: [["note", "x".repeat(300_000)]] }),
    await send({ ...whole, ...rest, studentId: "nobody" }),
    await send({ ...whole, ...rest, form: "import" }),
    await send({ ...whole, ...rest }),
    await send({ ...whole, ...rest, writer: "v", entries: [["note", "other"]] }),
  ];
  expect(answers.map(({ status }) => status)).toEqual([422, 413, 404, 404, 200, 409]);
  for (const { body } of answers) expect((JSON.parse(body) as { said: string }).said).toMatch(/^[A-Z].+\w\.?$/s);
  const dropped = await sendRaw(
    "POST",
    "/api/drafts/drop",
    { ...headers, "Content-Type": "application/x-www-form-urlencoded" },
    `draft=${whole.draft}&back=//elsewhere.invalid`,
  );
  expect([dropped.status, dropped.headers.location]).toEqual([303, "/record"]);
});

test.describe
  .serial("a form that is typed into", () => {
    test("is one of a student who is added", async ({ page }) => {
      await page.goto("/students/new");
      await page.getByLabel("Alias or first name").fill("Quin");
      await page.getByLabel("right-handed").check();
      await page.getByLabel("Given by").fill("mother");
      await page.getByLabel("I hold this consent on paper.").check();
      await page.getByRole("button", { name: "Add the student" }).click();
      await expect(page.getByRole("heading", { level: 1 })).toHaveText("Quin: no film yet");
      FORM = `${new URL(page.url()).pathname}/sessions/new`;
    });

    test("of more than a browser sends on is whole when the page is left at once, and after one that wasn't kept before", async ({
      page,
      context,
    }) => {
      await page.goto(FORM);
      const address = page.url();
      await cell(page, "note").fill(`wind ${"x".repeat(90_000)}`);
      await expect(status(page)).toHaveText(KEPT);
      await cell(page, "solid").fill("7");
      await page.goto("/record");
      await page.goto(address);
      await expect(cell(page, "solid")).toHaveValue("7");
      expect((await cell(page, "note").inputValue()).length).toBe(90_005);

      const other = await context.newPage();
      let release = (): void => {};
      const waits = new Promise<void>((resolve) => {
        release = resolve;
      });
      await other.route("**/api/drafts", async (route) => {
        await waits;
        await route.continue();
      });
      await other.goto(FORM);
      const again = other.url();
      await cell(other, "note").fill(`rain ${"y".repeat(90_000)}`);
      await cell(other, "balls").fill("9");
      await other.evaluate(() => window.dispatchEvent(new Event("pagehide")));
      expect(await stored(other)).toContain('\\"balls\\",\\"9\\"');
      expect(await stored(other)).not.toContain("rain");
      release();
      await expect(status(other)).toHaveText(KEPT);
      expect(await stored(other)).not.toContain("balls");
      for (const id of [address, again]) {
        const body = new URLSearchParams({ draft: new URL(id).searchParams.get("draft") ?? "", back: "/record" });
        await page.request.post("/api/drafts/drop", {
          headers: { origin: new URL(id).origin, "content-type": "application/x-www-form-urlencoded" },
          data: body.toString(),
        });
      }
      await other.close();
    });

    test("is kept within two seconds, comes back after a reload, and is offered to whoever begins anew", async ({
      page,
      context,
    }) => {
      await page.goto(FORM);
      await expect(status(page)).toHaveText("What you type is kept as you type.");
      await cell(page, "r.1.trail-v").fill("42");
      await cell(page, "note").fill("windy");
      await expect(status(page)).toHaveText(KEPT, { timeout: 2000 });
      await page.reload();
      await expect(cell(page, "r.1.trail-v")).toHaveValue("42");
      await expect(cell(page, "note")).toHaveValue("windy");
      await expectAccessible(page);
      await page.getByRole("link", { name: "Students", exact: true }).first().click();
      await expect(page).toHaveURL(/\/students$/);
      await page.goBack();
      await expect(cell(page, "note")).toHaveValue("windy");
      // Sent on while the page goes: another window has it, though nobody waited.
      await cell(page, "r.1.trail-v").fill("43");
      await page.reload();
      const other = await secondWindow(context, page.url());
      await expect(cell(other, "r.1.trail-v")).toHaveValue("43");
      await other.close();
      await page.goto(FORM);
      await expect(cell(page, "r.1.trail-v")).toHaveValue("");
      await page.getByRole("link", { name: "Go on" }).first().click();
      await expect(cell(page, "note")).toHaveValue("windy");
      await page.goto("/record");
      await page.getByText("Drop it …").first().click();
      await page.getByRole("button", { name: "Yes, drop it" }).first().click();
      await page.getByRole("button", { name: "Undo" }).first().click();
      await expect(cell(page, "note")).toHaveValue("windy");
    });

    test("stays in the form without a connection, numbers in the browser and no note, and goes when it is back", async ({
      page,
      context,
      watch,
    }) => {
      watch.provoked.push(/ERR_INTERNET_DISCONNECTED/);
      await page.goto(FORM);
      await cell(page, "r.1.trail-v").fill("41");
      await expect(status(page)).toHaveText(KEPT);
      await context.setOffline(true);
      await cell(page, "r.2.trail-v").fill("48");
      await cell(page, "note").fill("her knee hurts");
      await expect(status(page)).toContainText("Not sent yet");
      expect(await stored(page)).toContain("48");
      expect(await stored(page)).not.toContain("knee");
      await save(page).click();
      await expect(status(page)).toContainText("Not saved: no connection");
      await expect(cell(page, "note")).toHaveValue("her knee hurts");
      await context.setOffline(false);
      await expect(status(page)).toHaveText(KEPT, { timeout: 20_000 });
      expect(await stored(page)).toBe("{}");
      await page.reload();
      await expect(cell(page, "note")).toHaveValue("her knee hurts");
    });

    test("in two windows tells the later one both values, and takes what was chosen", async ({
      page,
      context,
      watch,
    }) => {
      watch.provoked.push(/status of 409/);
      await page.goto(FORM);
      const other = await secondWindow(context, page.url());
      await cell(other, "r.1.trail-v").fill("40");
      await expect(status(other)).toHaveText(KEPT);
      await cell(page, "r.1.trail-v").fill("45");
      await cell(page, "r.2.trail-v").fill("46");
      await expect(page.getByText(/Changed in another window at .*Both are below/).first()).toBeVisible();
      await expectAccessible(page);
      const row = page.getByRole("row").filter({ has: page.getByText("45", { exact: true }) });
      await row.getByRole("radio").nth(1).check();
      await page
        .getByRole("row")
        .filter({ has: page.getByText("46", { exact: true }) })
        .getByRole("radio")
        .first()
        .check();
      await page.getByRole("button", { name: "Use what is chosen" }).click();
      await expect(cell(page, "r.1.trail-v")).toHaveValue("40");
      await expect(cell(page, "r.2.trail-v")).toHaveValue("46");
      await other.close();
    });

    test("pressed twice and sent again after Back is one session, and the page says what it changed", async ({
      page,
    }) => {
      const before = sessionsSaved();
      await page.goto(FORM);
      await cell(page, "r.1.trail-v").fill("44");
      await cell(page, "r.2.trail-v").fill("41");
      await save(page).dblclick();
      await expect(page).toHaveURL(/\/sessions\/[^/]+\/saved$/, { timeout: 30_000 });
      const saved = page.url();
      await expect(page.getByText(/All of it is on the disk/)).toBeVisible();
      await expect(page.getByRole("region", { name: "What changed" })).toBeVisible();
      await expectAccessible(page);
      await page.goBack();
      await expect(status(page)).toContainText("This form was saved at");
      expect(sessionsSaved()).toBe(before + 1);
      await page.goto(saved);
      await expect(page.getByRole("heading", { level: 1 })).toContainText("Saved:");
    });

    test("works without scripts: an outdated page is refused with both, a choice is taken, and it is saved once", async ({
      browser,
    }) => {
      const context = await browser.newContext({ javaScriptEnabled: false, baseURL: served.address });
      const page = await context.newPage();
      const before = sessionsSaved();
      await page.goto(FORM);
      const other = await secondWindow(context, page.url());
      await cell(other, "r.1.trail-v").fill("44");
      await cell(other, "balls").fill("x");
      await save(other).click();
      await expect(cell(other, "r.1.trail-v")).toHaveValue("44");
      await cell(page, "r.1.trail-v").fill("47");
      await save(page).click();
      await expect(page.getByText(/Changed in another window at .*Both are below/).first()).toBeVisible();
      for (const radio of await page.locator('input[name^="pick."][value="there"]').all()) await radio.check();
      await save(page).click();
      await expect(page).toHaveURL(/\/saved$/, { timeout: 30_000 });
      expect(sessionsSaved()).toBe(before + 1);
      await context.close();
    });
  });
