import type { Page } from "playwright/test";
import { addStudent } from "./add-student";
import { drawingNames, errorFaults } from "./in-page";
import { PROVED } from "./page-states";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

// X2: what whoever hears a page is told: what a chart has found, what is wrong with a field, and that something was saved.

const drawingsOf = async (page: Page): Promise<string[]> => (await page.evaluate(drawingNames)).map(({ name }) => name);

for (const scripts of [true, false])
  test(`X2, X5: a chart says its finding, the level of the page's own sentence among it, scripts ${scripts ? "on" : "off"}`, async ({
    browser,
    entered,
  }) => {
    const context = await browser.newContext({
      ...{ javaScriptEnabled: scripts, baseURL: served.address, storageState: entered },
    });
    const page = await context.newPage();
    await page.goto(PROVED);
    if (scripts) await expect(page.locator("[data-chart]").first()).toHaveAttribute("data-chart", "live");
    const sentence = await page
      .getByText(/The level is /)
      .first()
      .textContent();
    const level = /The level is (\S+\s±\s\S+)/.exec(sentence ?? "")?.[1] ?? "no level";
    const drawings = await drawingsOf(page);
    expect(drawings.some((name) => name.includes(level) && /The level went from/.test(name))).toBe(true);
    await page.goto("/students/s01");
    const small = await drawingsOf(page);
    expect(small.length).toBeGreaterThan(3);
    for (const name of small) expect(name).toMatch(/\d/);
    await context.close();
  });

/** Forms with a field that must not stay empty. */
const FORMS = ["/students/new", "/students/s01/consent", "/students/s01/practice", "/import", "/settings"];

test(`X2: of ${FORMS.length} forms sent empty each field that is wrong says why, and the page says so at once`, async ({
  page,
}) => {
  const faults: string[] = [];
  for (const path of FORMS) {
    await page.goto(path);
    const form = page.locator("main form", { has: page.locator("button.do") }).first();
    await form.evaluate((at) => {
      (at as HTMLFormElement).noValidate = true;
    });
    await form.locator("button.do").first().click();
    await expect(page.locator("main [role=alert]").first()).toBeVisible();
    faults.push(...(await page.evaluate(errorFaults)).map((each) => `${path}: ${each}`));
    await expectAccessible(page);
  }
  expect(faults).toEqual([]);
});

test("X2: that what is typed is kept is announced in its place, and what was saved is the page that follows", async ({
  page,
}) => {
  const bare = await addStudent(page, "Spoken");
  await page.goto(`${bare}/events/new?kind=growth`);
  await page.getByLabel("Day", { exact: true }).fill("2026-06-01");
  await expect(page.getByRole("main").getByRole("status").first()).toHaveText(/^Kept .*\d\d:\d\d$/);
  await page.locator("main form button.do").first().click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Spoken: growth, 1 Jun");
});
