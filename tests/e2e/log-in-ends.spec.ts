import type { Browser, BrowserContext, Page } from "playwright/test";
import { withDemo } from "../trust/demo-roles";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

// X7: a log-in that ends while somebody types is announced, and what was typed is there after the next one.

const NEW_WINDOW = { baseURL: served.address, storageState: { cookies: [], origins: [] } };

async function enter(page: Page): Promise<void> {
  await page.goto("/sign-in");
  await page.getByRole("button", { name: "Look as Coach Wren" }).click();
  await page.waitForURL("**/students");
}

/** The log-in of one browser, to be ended behind its back. */
async function tokenOf(context: BrowserContext): Promise<string> {
  const { value = "" } = (await context.cookies()).find(({ name }) => name.endsWith("session_token")) ?? {};
  return decodeURIComponent(value).split(".")[0] ?? "";
}

/** Leaves a log-in so many milliseconds. */
function leave(token: string, left: number): void {
  const changed = withDemo(
    (db) =>
      db.sqlite.prepare("UPDATE auth_session SET expires_at = ? WHERE token = ?").run(Date.now() + left, token).changes,
  );
  expect(changed).toBe(1);
}

async function newWindow(
  browser: Browser,
  scripts: "scripts" | "none",
): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext({ ...NEW_WINDOW, javaScriptEnabled: scripts === "scripts" });
  return { context, page: await context.newPage() };
}

const MINUTE = 60_000;

/** How often the server is asked when the window is hidden or shown again. */
async function asked(page: Page, state: "hidden" | "visible"): Promise<number> {
  let times = 0;
  const count = (): void => {
    times += 1;
  };
  await page.route("**/api/log-in", (route) => {
    count();
    return route.fulfill({ status: 401 });
  });
  await page.evaluate((visibilityState) => {
    Object.defineProperty(document, "visibilityState", { configurable: true, get: () => visibilityState });
    document.dispatchEvent(new Event("visibilitychange"));
  }, state);
  // A request that was going out would be out before the answer to this one.
  await page.evaluate(() => fetch("/api/health"));
  await page.unroute("**/api/log-in");
  return times;
}

test("X7: before a log-in ends it is said when, one press lets it go on, and afterwards the way back is there", async ({
  browser,
}) => {
  const { context, page } = await newWindow(browser, "scripts");
  await page.clock.install();
  await enter(page);
  await page.goto("/students/s31/sessions/new");
  const end = page.locator("[data-log-in]");
  // What is kept was typed once the page's own scripts ran, which look at the clock.
  await page.locator('[name="note"]').fill("wind");
  await expect(page.getByRole("status").first()).toHaveText(/^Kept /);
  await expect(end).toHaveAttribute("data-log-in", "quiet");
  leave(await tokenOf(context), 10 * MINUTE);
  await page.clock.fastForward("11:48:00");
  await expect(end).toContainText(/You will be signed out at \d\d:\d\d/);
  await expectAccessible(page);
  // Another window goes on meanwhile, and soon this one knows.
  leave(await tokenOf(context), 11 * 60 * MINUTE);
  await page.clock.fastForward("01:30");
  await expect(end).toHaveAttribute("data-log-in", "quiet");
  leave(await tokenOf(context), 10 * MINUTE);
  await page.clock.fastForward("10:46:00");
  await expect(end).toContainText(/You will be signed out at \d\d:\d\d/);
  await page.route("**/api/log-in", (route) => route.abort());
  await page.getByRole("button", { name: "Stay signed in" }).click();
  await expect(end).toContainText(/can’t be reached.* signed out at \d\d:\d\d/);
  await expectAccessible(page);
  await page.unroute("**/api/log-in");
  await page.getByRole("button", { name: "Stay signed in" }).click();
  await expect(end).toContainText(/You stay signed in until \d\d:\d\d/);
  leave(await tokenOf(context), -1);
  await page.clock.fastForward("11:59:00");
  await page.clock.fastForward("00:05:00");
  await expect(end).toContainText("You are signed out");
  await expect(end.getByRole("link", { name: "Sign in, in another window" })).toBeVisible();
  await expectAccessible(page);
  expect(await asked(page, "hidden")).toBe(0);
  expect(await asked(page, "visible")).toBe(1);
  await context.close();
});

const SESSION = () =>
  withDemo((db) =>
    db.sqlite.prepare<[], string>("SELECT id FROM session WHERE student_id = 's10' LIMIT 1").pluck().get(),
  );

/** The page, the field, what is kept before the log-in ends, and what is typed after. */
const FORMS: readonly (readonly [() => string, string, string, string])[] = [
  [() => "/students/s31/sessions/new", '[name="note"]', "wind from th", "wind from the left"],
  [() => `/students/s10/sessions/${SESSION()}/correct`, '[name="why"]', "arm in", "arm in front"],
  [() => "/students/new", '[name="alias"]', "Ro", "Robin"],
  [() => "/students/s10/practice", '[name^="minutes."]', "2", "25"],
  [() => "/settings", '[name="ownerName"]', "Coach Ha", "Coach Hawk"],
];

test(`X7: in ${FORMS.length} forms what was typed before the end is there after the next log-in, and what was typed after it goes then`, async ({
  browser,
}) => {
  test.setTimeout(180_000);
  const { context, page } = await newWindow(browser, "scripts");
  for (const [address, field, before, after] of FORMS) {
    await enter(page);
    await page.goto(address());
    await page.waitForURL(/[?&]draft=/);
    const form = page.url();
    const said = page.getByRole("status").first();
    await page.locator(field).first().fill(before);
    await expect(said).toHaveText(/^Kept .*\d\d:\d\d$/);
    leave(await tokenOf(context), -1);
    await page.locator(field).first().fill(after);
    await expect(said).toContainText("You are signed out, so this is not sent yet");
    await page.locator("button[type=submit].do").first().click();
    await expect(page.locator(field).first()).toHaveValue(after);
    expect(page.url()).toBe(form);
    // The first window tries again by itself, and would be first on a slow machine: it has no line meanwhile.
    await page.route("**/api/drafts", (route) => route.abort());
    const [other] = await Promise.all([
      context.waitForEvent("page"),
      page.getByRole("link", { name: "Sign in, in another window" }).first().click(),
    ]);
    await other.getByRole("button", { name: "Look as Coach Wren" }).click();
    await other.waitForURL(/[?&]draft=/);
    expect(new URL(other.url()).searchParams.get("draft")).toBe(new URL(form).searchParams.get("draft"));
    await expect(other.locator(field).first()).toHaveValue(before);
    await other.close();
    await page.unroute("**/api/drafts");
    // Back in the first window.
    await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));
    await expect(said).toHaveText(/^Kept .*\d\d:\d\d$/);
    await page.reload();
    await expect(page.locator(field).first()).toHaveValue(after);
  }
  await context.close();
  console.log(`X7: ${FORMS.length} forms`);
});

test("X7: without scripts the answer holds all that was typed, and sends it again after the log-in", async ({
  browser,
}) => {
  const { context, page } = await newWindow(browser, "none");
  await enter(page);
  await page.goto("/settings/keys");
  await page.getByLabel("Name of the program or device").fill('The nets’ "phone" <2>');
  leave(await tokenOf(context), -1);
  await page.getByRole("button", { name: "Make a key" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Please sign in again.");
  await expect(page.getByText("All you typed is in this page")).toBeVisible();
  const [other] = await Promise.all([
    context.waitForEvent("page"),
    page.getByRole("link", { name: "Sign in, in another window" }).click(),
  ]);
  await other.getByRole("button", { name: "Look as Coach Wren" }).click();
  await other.close();
  await page.getByRole("button", { name: "Send it again" }).click();
  await expect(page.locator("code")).toHaveText(/^pbk_/);
  await page.getByRole("button", { name: /Revoke “The nets’ "phone" <2>”/ }).click();
  await context.close();
});
