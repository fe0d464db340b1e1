import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import type { Page } from "playwright/test";
import { addStudent } from "./add-student";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

// What a coach tells a family: the message, the file and the letter, and what was told.

const WIDTHS = [320, 390, 768, 1440];
/** A margin as browsers print with by default. */
const MARGIN = { top: "12mm", bottom: "12mm", left: "12mm", right: "12mm" };

async function noSideways(page: Page, address: string): Promise<void> {
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 900 });
    for (const details of await page.locator("details:not([open]) > summary").all()) await details.click();
    const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(`${address} ${width} ${over <= 0}`).toBe(`${address} ${width} true`);
  }
}

test("the pages hold at 320 to 1440 px and can be read by everyone", async ({ page }) => {
  for (const address of ["/students/s01/tell", "/students/s01/tell/letter"]) {
    await page.goto(address);
    await expectAccessible(page);
    await noSideways(page, address);
  }
});

test("without a consent to share nothing is offered, and the page leads to the consent", async ({ page }) => {
  const student = await addStudent(page, "Tell of Tim");
  await page.goto(`${student}/tell`);
  await expect(page.getByRole("heading", { name: "Nobody has agreed to share yet" })).toBeVisible();
  await expect(page.locator("textarea")).toHaveCount(0);
  await expect(page.getByRole("link", { name: "Save the file" })).toHaveCount(0);
  await page.goto(`${student}/tell/letter`);
  await expect(page.getByRole("heading", { name: "Nobody has agreed to share yet" })).toBeVisible();
  const file = await page.request.get(`/api${student}/tell/file`, { maxRedirects: 0 });
  expect([file.status(), file.headers().location]).toEqual([303, expect.stringMatching(/\/tell\?done=no-consent$/)]);
});

test("the message is copied in one press, kept as told in one press, read word for word, taken back and put back", async ({
  page,
  context,
}) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await page.goto("/students/s03/tell");
  const message = page.getByLabel(/^The message, \d+ letters$/);
  const text = await message.inputValue();
  expect(text.length).toBeLessThanOrEqual(600);
  await page.getByRole("button", { name: "Copy" }).click();
  await expect(page.getByText("Copied.")).toBeVisible();
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(text);
  await page.getByRole("button", { name: "I have sent this message: keep it as told" }).click();
  await expect(page.getByText("Kept as told, word for word.")).toBeVisible();
  await page
    .locator("summary", { hasText: /^Message, / })
    .first()
    .click();
  await expect(page.locator("details[open] p").first()).toHaveText(text);
  await page.getByRole("button", { name: "I have sent this message: keep it as told" }).click();
  await expect(page.getByText("This very text was kept as told today already.")).toBeVisible();
  await page
    .locator("summary", { hasText: /^Message, / })
    .first()
    .click();
  await page.getByRole("button", { name: /^It was not sent/ }).click();
  await expect(page.getByText("Taken back. It counts as not sent.")).toBeVisible();
  await expect(page.getByRole("heading", { name: "Nothing told stands" })).toBeVisible();
});

test("the file opens from disk with nothing beside it, at 320 px and on paper, and names nobody in its name or title", async ({
  page,
  browser,
  watch,
}, info) => {
  // The file itself, opened from disk.
  watch.provoked.push(/^outside: file:.*for-the-family-[0-9-]+\.html$/);
  await page.goto("/students/s01/tell");
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("link", { name: "Save the file" }).click(),
  ]);
  const name = download.suggestedFilename();
  expect(name).toMatch(/^for-the-family-\d{4}-\d{2}-\d{2}\.html$/);
  const kept = path.join(info.outputDir, name);
  await download.saveAs(kept);
  const again = await page.request.get("/api/students/s01/tell/file");
  expect(again.headers()["cache-control"]).toContain("no-store");
  expect(await again.text()).toBe(readFileSync(kept, "utf8"));
  const offline = await browser.newContext({ offline: true, viewport: { width: 320, height: 640 } });
  const opened = await offline.newPage();
  const asked: string[] = [];
  const said: string[] = [];
  opened.on("request", (request) => asked.push(request.url()));
  opened.on("console", (line) => said.push(line.text()));
  await opened.goto(`file://${kept}`);
  expect(asked).toEqual([`file://${kept}`]);
  expect(said).toEqual([]);
  expect(await opened.title()).toBe("For the family");
  await expect(opened.getByRole("heading", { level: 1 })).toContainText("Ari");
  await expect(opened.locator("svg")).toHaveCount(1);
  expect(await opened.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe("rgb(250, 248, 243)");
  expect(await opened.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
  await opened.screenshot({ path: path.join(info.outputDir, "file.png"), fullPage: true });
  writeFileSync(path.join(info.outputDir, "file.pdf"), await opened.pdf({ format: "A4", margin: MARGIN }));
  await offline.close();
});

test("a letter is one sheet of A4 and of letter paper, with the coach's own paragraph, and is kept as told", async ({
  page,
}) => {
  await page.goto("/students/s04/tell/letter");
  await page.getByLabel("Your own paragraph").fill(`She listens well. ${"And she asks good questions. ".repeat(38)}`);
  await page.getByLabel("Where your paragraph stands").selectOption("first");
  await page.getByRole("button", { name: "Show the letter so" }).click();
  await expect(page.getByRole("heading", { name: /own words$/ })).toBeVisible();
  for (const format of ["A4", "Letter"] as const) {
    const pdf = (await page.pdf({ format, margin: MARGIN })).toString("latin1");
    expect(`${format} ${pdf.match(/\/Type\s*\/Page\b/g)?.length}`).toBe(`${format} 1`);
  }
  const text = await page.getByLabel("The letter as text").inputValue();
  expect(text).toContain("own words\nShe listens well.");
  await page.getByRole("button", { name: "I have sent this letter: keep it as told" }).click();
  await expect(page.getByText("Kept as told, word for word.")).toBeVisible();
  await page
    .locator("summary", { hasText: /^Letter, / })
    .first()
    .click();
  await expect(page.locator("details[open] p").first()).toHaveText(text.replace(/\s+/g, " "));
});

test("without scripts the message stands to be selected, is kept, and a letter is changed and kept", async ({
  browser,
}) => {
  const context = await browser.newContext({
    javaScriptEnabled: false,
    baseURL: served.address,
    storageState: served.signedIn,
  });
  const page = await context.newPage();
  await page.goto("/students/s05/tell");
  await expect(page.getByLabel(/^The message, \d+ letters$/)).toHaveValue(/^Eli: /);
  await expect(page.getByRole("button", { name: "Copy" })).toHaveCount(0);
  await page.getByRole("button", { name: "I have sent this message: keep it as told" }).click();
  await expect(page.getByText("Kept as told, word for word.")).toBeVisible();
  await page.goto("/students/s05/tell/letter");
  await page.getByLabel("Your own paragraph").fill("He listens well.\nMore next year.");
  await page.getByRole("button", { name: "Show the letter so" }).click();
  await expect(page.getByText("He listens well.").first()).toBeVisible();
  await page.getByRole("button", { name: "I have sent this letter: keep it as told" }).click();
  await expect(page.getByText("Kept as told, word for word.")).toBeVisible();
  await context.close();
});
