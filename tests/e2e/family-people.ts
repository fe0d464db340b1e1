import type { Browser, Page } from "playwright/test";
import { PASSWORD } from "../app/server/people-academy";
import type { FamilyServer } from "./family-server";
import { expect, expectAccessible } from "./watched";

/** The phone of a family, on which no script runs. */
export async function plainPhone(browser: Browser): Promise<Page> {
  const viewport = { width: 390, height: 844 };
  const context = await browser.newContext({
    ...{ javaScriptEnabled: false, storageState: { cookies: [], origins: [] }, viewport },
  });
  return context.newPage();
}

/** Signs the coach of a family in. */
export async function coachOn(server: FamilyServer, page: Page): Promise<void> {
  await page.goto(`${server.address}/sign-in`);
  await page.getByLabel("E-mail address").fill("bo@range.example");
  await page.getByLabel("Password").fill(PASSWORD);
  await page.getByRole("button", { name: "Sign in" }).click();
  await page.waitForURL("**/students");
}

/** Makes a link on its page, and reads it there. */
export async function makeLink(server: FamilyServer, page: Page, student: string, label: string): Promise<string> {
  await page.goto(`${server.address}/students/${student}/family`);
  await page.getByLabel("For whom").fill(label);
  await page.getByRole("button", { name: "Make the link" }).click();
  const shown = page.locator("code", { hasText: "/family/open/" });
  await expect(shown).toHaveCount(1);
  return (await shown.textContent()) ?? "";
}

/** A page is accessible and no wider than its window. */
export async function holds(page: Page): Promise<void> {
  await expectAccessible(page);
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
}
