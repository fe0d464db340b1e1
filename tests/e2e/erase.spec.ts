import type { Page } from "playwright/test";
import { addStudent } from "./add-student";
import { type KeyboardWay, pressAt, tabTo } from "./by-keyboard";
import { alert, expect, expectAccessible, test } from "./watched";

const WIDTHS = [390, 768, 1440];

async function eraseAs(page: Page, alias: string): Promise<void> {
  await page.getByLabel("The family or the student asked for it").check();
  await page.getByLabel(`Type ${alias} to say that you mean it`).fill(alias);
  await page.getByRole("button", { name: "Erase for good" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("The record is erased");
}

test("a student is erased when it is meant, and not before; each page is whole and accessible at three widths", async ({
  page,
  watch,
}) => {
  const student = await addStudent(page, "Kestrel");
  await page.goto(`${student}/erase`);
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 900 });
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("Erase Kestrel");
    await expectAccessible(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  }
  await expect(page.getByRole("link", { name: "Download everything as one archive" })).toBeVisible();
  await page.getByLabel("The student was added by mistake").check();
  await page.getByLabel("Type Kestrel to say that you mean it").fill("Kestre");
  await page.getByRole("button", { name: "Erase for good" }).click();
  await expect(alert(page)).toContainText("Nothing was erased.");
  await expectAccessible(page);
  await eraseAs(page, "Kestrel");
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 900 });
    await expectAccessible(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  }
  await expect(page.getByText("Kestrel")).toHaveCount(0);
  watch.provoked.push(/status of 404/);
  expect((await page.goto(student))?.status()).toBe(404);
  await page.goto("/people/keeping");
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 900 });
    await expectAccessible(page);
  }
  await expect(page.getByRole("table", { name: "Erased so far, the latest first" })).toContainText("asked for it");
});

test("erases without scripts", async ({ browser, entered, baseURL }) => {
  const context = await browser.newContext({ javaScriptEnabled: false, storageState: entered, baseURL });
  const page = await context.newPage();
  const student = await addStudent(page, "Plover");
  await page.goto(`${student}/erase`);
  await eraseAs(page, "Plover");
  await page.goto("/students");
  await expect(page.getByText("Plover")).toHaveCount(0);
  await context.close();
});

test("X1: erases by keyboard alone", async ({ page }) => {
  const way: KeyboardWay = { faults: [], steps: 0 };
  const student = await addStudent(page, "Wheatear");
  await page.goto(student);
  await pressAt(way, page, "Family and privacy");
  await page.waitForURL(/\/family\?draft=/);
  await pressAt(way, page, "Erase");
  await page.waitForURL(/\/erase$/);
  await tabTo(way, page, "The family or the student asked for it");
  await page.keyboard.press("Space");
  await tabTo(way, page, /^Type Wheatear/);
  await page.keyboard.type("Wheatear");
  await pressAt(way, page, "Erase for good");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("The record is erased");
  expect(way.faults).toEqual([]);
});
