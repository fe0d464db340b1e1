import { AT, answer, button, letIn, lives, onThePhone, rows } from "./family-phone";
import { beyond, sumOf, weighScripts } from "./scripts-of";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

// Practice written down in one tap, with scripts and without, and what the page's scripts weigh.

onThePhone();

test("one tap with the answer about pain writes today’s minutes down; a second tap of the same finger is none; it is undone", async ({
  page,
}) => {
  await lives(page);
  await button(page, 10).click();
  await expect(page.getByText("Please say whether something hurts: yes or no.")).toBeVisible();
  expect(rows()).toEqual([]);
  await answer(page, "no").check();
  await button(page, 10).dblclick();
  await expect(page.getByRole("status").first()).toContainText("Saved for");
  expect(rows()).toEqual([{ minutes: 10, balls: null, felt: null, pain: null }]);
  await expect(
    page
      .getByRole("listitem")
      .filter({ hasText: /10 minutes/ })
      .first(),
  ).toBeVisible();
  await expectAccessible(page);
  await page.getByRole("button", { name: /^Undo for .*: 10 minutes/ }).click();
  await expect(page.getByRole("status").first()).toContainText("Undone for");
  expect(rows()).toEqual([]);
});

test("a yes puts “stop” in the place of buttons and task before anything is sent, asks where, and is told", async ({
  page,
}) => {
  await expect(page.locator("[data-task]")).toBeVisible();
  await answer(page, "yes").check();
  await expect(page.locator("[data-task]")).toBeHidden();
  await expect(button(page, 10)).toBeHidden();
  await expectAccessible(page);
  await page.getByLabel("Where does it hurt?").selectOption({ label: "wrist" });
  await page.getByRole("button", { name: /it hurts$/ }).click();
  await expect(page.getByText("You said that something hurts: wrist.")).toBeVisible();
  expect(rows()).toEqual([{ minutes: null, balls: null, felt: null, pain: "wrist" }]);
});

test("without scripts it is whole: a tap, a tap without the answer, more exactly, a yes", async ({ browser }) => {
  const context = await browser.newContext({
    ...{ javaScriptEnabled: false, baseURL: served.address, viewport: { width: 320, height: 700 } },
  });
  await letIn(context);
  const page = await context.newPage();
  await page.goto(AT);
  await button(page, 5).click();
  await expect(page.getByRole("alert")).toHaveText("Please say whether something hurts: yes or no.");
  await answer(page, "no").check();
  await button(page, 5).click();
  await expect(page.getByRole("status").first()).toContainText("Saved for");
  await page.getByText("Write more down, or for yesterday").click();
  const exact = page.locator("[data-log=exact]");
  await exact.getByLabel("Balls").fill("1001");
  await exact.getByLabel("no", { exact: true }).check();
  await exact.getByRole("button").click();
  await expect(exact).toContainText("That is more than 1000 balls in one day.");
  await exact.getByLabel("Balls").fill("30");
  await exact.getByLabel("hard").check();
  await exact.getByRole("button").click();
  expect(rows()).toHaveLength(2);
  expect(rows()).toEqual(
    expect.arrayContaining([
      { minutes: 5, balls: null, felt: null, pain: null },
      { minutes: null, balls: 30, felt: "hard", pain: null },
    ]),
  );
  await answer(page, "yes").check();
  await page.getByRole("button", { name: /it hurts$/ }).click();
  await expect(page.getByText("You said that something hurts")).toBeVisible();
  await context.close();
});

/** Gzip of its files beyond those of an empty page of the project; what the framework repeats of any page in it is said beside it. */
const MOST_BYTES = 12 * 1024;

test("the page’s scripts weigh at most 12 KiB gzip beyond those of a page with nothing on it", async ({ page }) => {
  const html = await (await page.goto(AT))?.text();
  const empty = await (await page.goto("/there-is-no-such-page"))?.text();
  const [family, nothing] = await Promise.all([
    weighScripts(served.address, html ?? ""),
    weighScripts(served.address, empty ?? ""),
  ]);
  const files = beyond(family, nothing);
  const inline = family.inline - nothing.inline;
  console.log(
    `scripts, bytes of gzip: ${files} beyond an empty page’s ${sumOf(nothing)}; of the framework inline ${inline} beyond ${nothing.inline}; the page ${family.page}`,
  );
  expect(nothing.files.length).toBeGreaterThan(3);
  expect(files).toBeGreaterThan(0);
  expect(files).toBeLessThanOrEqual(MOST_BYTES);
});
