import path from "node:path";
import type { Browser, Page } from "playwright/test";
import { openDatabase } from "@/db/client";
import { englishPieces } from "../lib/words/english-pieces";
import { addDemoFamily, demoFamilyCookie, demoPageId } from "./demo-family";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

// A coach sets that a family reads German: its page, message, file and letter are, and the coach's own pages stay as they were.

const PAGE = `/family/${demoPageId("live")}`;
const PIECES = englishPieces(served.root);

test.beforeAll(() => addDemoFamily());
// Other files read this family's page in English.
test.afterAll(() => {
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"));
  try {
    db.sqlite.prepare("UPDATE student SET language = 'en' WHERE id = 's01'").run();
  } finally {
    db.close();
  }
});

/** What of the English words for families stands in a text. */
function englishIn(text: string): readonly string[] {
  return PIECES.filter((piece) => text.includes(piece));
}

/** Opens whatever is shut. */
function openAll(page: Page): Promise<void> {
  return page.evaluate(() => {
    for (const details of document.querySelectorAll("details")) details.open = true;
  });
}

async function letFamilyRead(page: Page, language: string): Promise<void> {
  await page.goto("/students/s01/tell");
  const chosen = page.getByRole("heading", { name: `The family reads ${language}` });
  if (await chosen.isVisible()) return;
  await page.getByRole("button", { name: `Let the family read ${language}` }).click();
  await expect(chosen).toBeVisible();
}

async function familyPhone(browser: Browser): Promise<Page> {
  const context = await browser.newContext({
    ...{ storageState: { cookies: [], origins: [] }, viewport: { width: 390, height: 844 }, locale: "en-GB" },
  });
  const [name = "", value = ""] = demoFamilyCookie("live").split("=");
  await context.addCookies([
    { name, value, url: served.address },
    { name: "proofband-academy", value: "demo", url: served.address },
  ]);
  return context.newPage();
}

test("a coach chooses German, and the family's page is German from its title to its last line", async ({
  page,
  browser,
}, info) => {
  await letFamilyRead(page, "German");
  const phone = await familyPhone(browser);
  try {
    const answer = await phone.goto(`${served.address}${PAGE}`);
    expect(answer?.status()).toBe(200);
    await expect(phone.locator("html")).toHaveAttribute("lang", "de");
    await expect(phone).toHaveTitle("Eure Seite");
    await openAll(phone);
    const text = await phone.evaluate(() =>
      [
        document.querySelector("main")?.textContent ?? "",
        ...[...document.querySelectorAll("[aria-label]")].map((each) => each.getAttribute("aria-label")),
        ...[...document.querySelectorAll("option")].map((each) => each.textContent),
      ].join("\n"),
    );
    expect(englishIn(text)).toEqual([]);
    expect(text).toContain("Was gut ist");
    expect(text).toMatch(/\d+,\d\s±\s\d+,\d°/u);
    expect(text).not.toMatch(/\d\.\d/);
    await expectAccessible(phone);
    for (const width of [320, 390, 768, 1440]) {
      await phone.setViewportSize({ width, height: 844 });
      const over = await phone.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(`${width}: ${over <= 0}`).toBe(`${width}: true`);
    }
    await phone.setViewportSize({ width: 390, height: 844 });
    await phone.screenshot({ path: path.join(info.outputDir, "german-390.png"), fullPage: true });
  } finally {
    await phone.context().close();
  }
});

test("what is logged and refused behind the link is said in German", async ({ page, browser, watch }) => {
  await letFamilyRead(page, "German");
  const phone = await familyPhone(browser);
  try {
    await phone.goto(`${served.address}${PAGE}`);
    await openAll(phone);
    await phone.getByLabel("Minuten", { exact: true }).fill("400");
    await phone.locator("#field-hurts").getByLabel("nein").check();
    await phone
      .getByRole("button", { name: /^Für .* speichern$/ })
      .first()
      .click();
    await expect(phone.getByText("Das sind mehr als 5 Stunden an einem Tag.").first()).toBeVisible();
    watch.provoked.push(/404/);
    // Without a cookie nothing is said of whose page it was, also not by its language.
    await phone.context().clearCookies();
    await phone.goto(`${served.address}${PAGE}`);
    await expect(phone.getByRole("heading", { name: "We can’t show a page from here" })).toBeVisible();
  } finally {
    await phone.context().close();
  }
});

test("message, file and letter are German and marked so on the coach's page, which stays English", async ({ page }) => {
  await letFamilyRead(page, "German");
  await expect(page.locator("html")).toHaveAttribute("lang", "en");
  await expect(page.getByRole("heading", { name: "One file to keep" })).toBeVisible();
  const message = page.getByLabel(/^The message, \d+ letters$/);
  await expect(message).toHaveAttribute("lang", "de");
  const text = await message.inputValue();
  expect(text.length).toBeLessThanOrEqual(600);
  expect(text).toContain("Tut etwas weh?");
  expect(englishIn(text)).toEqual([]);
  await expectAccessible(page);

  const answer = await page.request.get("/api/students/s01/tell/file");
  const html = await answer.text();
  expect(html).toContain('lang="de"');
  expect(html).toContain("Für die Familie");
  expect(englishIn(html.replace(/<style[\s\S]*?<\/style>/g, "").replace(/&#x27;/g, "’"))).toEqual([]);

  await page.goto("/students/s01/tell/letter");
  const sheet = page.locator("[lang=de]");
  expect(await sheet.count()).toBeGreaterThan(4);
  expect(englishIn((await sheet.allInnerTexts()).join("\n"))).toEqual([]);
  await expectAccessible(page);
});
