import type { Browser, Page } from "playwright/test";
import { expectToHold } from "./hold-at";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

const WIDTHS = [390, 768, 1440];
const STUDENT = "s07";
const PAGE = `/students/${STUDENT}/handing-over`;

/** Somebody of the demo in a browser of their own, in which no script runs. */
async function plain(browser: Browser, name: "Coach Wren" | "Coach Lark"): Promise<Page> {
  const cookie = { name: "proofband-academy", value: "demo", domain: "127.0.0.1", path: "/", expires: -1 };
  const context = await browser.newContext({
    ...{ javaScriptEnabled: false, baseURL: served.address, viewport: { width: 390, height: 844 } },
    storageState: { cookies: [{ ...cookie, httpOnly: true, secure: false, sameSite: "Lax" }], origins: [] },
  });
  const page = await context.newPage();
  await page.goto("/sign-in");
  await page.getByRole("button", { name: `Look as ${name}` }).click();
  return page;
}

test("handing over and what is inherited hold at 390 to 1440 px and can be read by everyone", async ({ page }) => {
  await expectToHold(page, [PAGE, `${PAGE}?kind=cover`, `${PAGE}/inherit`, "/people/charges"], WIDTHS);
});

test("a director hands a student over with scripts off; the coach reads what came, and hands back", async ({
  browser,
  watch,
}) => {
  watch.provoked.push(/status of 404/);
  const wren = await plain(browser, "Coach Wren");
  await wren.goto(PAGE);
  await wren.getByLabel("To", { exact: true }).selectOption({ label: "Coach Lark" });
  await wren.getByLabel("From", { exact: true }).fill("2020-01-01");
  await wren.getByLabel("Note to the other coach").fill("Look at the feet first.");
  await wren.getByRole("button", { name: "Save it" }).click();
  await expect(wren.locator("main [role=alert]").first()).toContainText("what you typed is kept");
  await expect(wren.getByLabel("Note to the other coach")).toHaveValue("Look at the feet first.");
  await wren.getByLabel("From", { exact: true }).fill("2026-09-12");
  await wren.getByRole("button", { name: "Save it" }).click();
  await expect(wren.getByRole("status").first()).toContainText("It is saved.");
  await expect(wren.getByRole("heading", { level: 1 })).toContainText("is with Coach Lark");

  const lark = await plain(browser, "Coach Lark");
  await lark.goto("/students");
  await expect(lark.getByRole("heading", { name: "A student has come to you" })).toBeVisible();
  await lark.goto(`${PAGE}/inherit`);
  await expect(lark.getByText("Coach Wren writes: “Look at the feet first.”")).toBeVisible();
  await expect(lark.getByRole("heading", { level: 2, name: /Handed over by Coach Wren/ })).toBeVisible();
  await lark.getByRole("button", { name: "Seen, take the notice off my list" }).click();
  await lark.goto("/students");
  await expect(lark.getByRole("heading", { name: "A student has come to you" })).toHaveCount(0);

  await lark.goto(PAGE);
  await lark.getByRole("link", { name: "Fill in: back to Coach Wren" }).click();
  await expect(lark.getByLabel("To", { exact: true })).toHaveValue("wren");
  await lark.getByRole("button", { name: "Save it" }).click();
  await expect(lark.getByRole("status").first()).toContainText("no more among yours");
  expect((await lark.goto(PAGE))?.status()).toBe(404);
  await wren.context().close();
  await lark.context().close();
});

test("a cover is planned, taken back, begun and ended; whoever covers hands nobody over", async ({
  browser,
  watch,
}) => {
  watch.provoked.push(/status of 404/);
  const wren = await plain(browser, "Coach Wren");
  const cover = async (from: string): Promise<void> => {
    await wren.goto(`${PAGE}?kind=cover&to=lark`);
    await wren.getByLabel("From", { exact: true }).fill(from);
    await wren.getByLabel("Last day of a cover").fill("2026-09-20");
    await wren.getByRole("button", { name: "Save it" }).click();
    await expect(wren.getByRole("status").first()).toContainText("It is saved.");
  };
  await cover("2026-09-15");
  await wren.getByRole("button", { name: "Take back the cover by Coach Lark" }).click();
  await expect(wren.getByRole("status").first()).toContainText("It is taken back.");
  await cover("2026-09-12");
  const lark = await plain(browser, "Coach Lark");
  await lark.goto(PAGE);
  await expect(lark.getByRole("heading", { name: "You cover this student" })).toBeVisible();
  await expect(lark.getByRole("button", { name: "Save it" })).toHaveCount(0);
  await expectAccessibleWithScripts(browser, lark);
  await wren.getByRole("button", { name: "End Coach Lark’s cover now" }).click();
  expect((await lark.goto(PAGE))?.status()).toBe(404);
  await wren.context().close();
  await lark.context().close();
});

/** The rules of accessibility are asked by a script; the same page in a browser that runs them. */
async function expectAccessibleWithScripts(browser: Browser, seen: Page): Promise<void> {
  const state = await seen.context().storageState();
  const context = await browser.newContext({ baseURL: served.address, storageState: state });
  const page = await context.newPage();
  await page.goto(PAGE);
  await expectAccessible(page);
  await context.close();
}
