import path from "node:path";
import type { Page } from "playwright/test";
import { digestTables } from "@/db/backup";
import { openDatabase } from "@/db/client";
import { addStudent } from "./add-student";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

const WIDTHS = [320, 390, 768, 1440];

const list = (page: Page, finding: RegExp) => page.getByRole("region", { name: finding });

async function keptDigest(): Promise<unknown> {
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"), "read");
  try {
    return await digestTables(db, ["preference", "seen", "look_noise", "session", "reading", "student"]);
  } finally {
    db.close();
  }
}

test.describe
  .serial("the coach's hour", () => {
    test("the roster says first what is proved, then one thing to do, then its lists, and holds at every width", async ({
      page,
    }) => {
      await page.goto("/students");
      const next = page.getByRole("region", { name: "Do next" });
      await expect(next.getByRole("heading")).toContainText(/^Open /);
      // What would put another thing in its place.
      await expect(next).toContainText(/comes? first|keep it in hand/);
      const stalled = list(page, /without a proved gain for eight weeks$/);
      await expect(stalled.getByRole("listitem")).toHaveCount(6);
      await expect(stalled.getByRole("link", { name: /^and \d+ more, in the table$/ })).toHaveAttribute(
        "href",
        "/students?show=stalled#roster",
      );
      await expectAccessible(page);
      for (const width of WIDTHS) {
        await page.setViewportSize({ width, height: 900 });
        const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
        expect(over).toBeLessThanOrEqual(0);
      }
    });

    test("never the word slip among what is to be looked at again, nor among who is away", async ({ page }) => {
      await page.goto("/students");
      for (const region of [list(page, /not seen for more than/), list(page, /to look at again$/)])
        for (const text of await region.allInnerTexts()) expect(text).not.toMatch(/slip/i);
    });

    test("weeks without a film are chosen without changing anything; nor does looking", async ({ page }) => {
      const before = await keptDigest();
      await page.goto("/students");
      await list(page, /for more than 6 weeks$/)
        .getByRole("link", { name: "12 weeks" })
        .click();
      await expect(list(page, /for more than 12 weeks$/)).toBeVisible();
      await page.goto("/students?aside=shown");
      expect(await keptDigest()).toEqual(before);
    });

    test("a line is dealt with by the keyboard and brought back; without scripts a whole list is put away", async ({
      page,
      browser,
    }) => {
      const alias = "Briar";
      await addStudent(page, alias);
      await page.goto("/students");
      const begin = list(page, /before the first drill$/);
      await expect(begin).toContainText(alias);
      await begin.getByRole("button", { name: `Dealt with: ${alias}` }).press("Enter");
      await expect(page.getByRole("button", { name: `Dealt with: ${alias}` })).toHaveCount(0);
      await page.getByRole("link", { name: /put away until something about (it|them) changes/ }).click();
      await page.getByRole("button", { name: `Bring back: ${alias}` }).press("Enter");
      await expect(page.getByRole("button", { name: `Dealt with: ${alias}` })).toHaveCount(1);
      await expectAccessible(page);
      const context = await browser.newContext({ javaScriptEnabled: false, baseURL: served.address });
      const plain = await context.newPage();
      await plain.goto("/students");
      await list(plain, /not seen for more than/)
        .getByRole("button", { name: "Put all of these away" })
        .click();
      await expect(list(plain, /not seen for more than/)).toHaveCount(0);
      await expect(list(plain, /without a proved gain/)).toHaveCount(1);
      await context.close();
    });

    test("one thing after the other is dealt with, until nothing else needs anybody", async ({ page }) => {
      await page.goto("/students");
      for (let left = 0; left < 12; left++) {
        const all = page.getByRole("button", { name: "Put all of these away" });
        if ((await all.count()) === 0) break;
        const word = await all.first().getAttribute("value");
        await all.first().click();
        await expect(page.locator(`button[name="list"][value="${word}"]`)).toHaveCount(0);
      }
      const quiet = page.getByRole("heading", { name: /nothing else/i });
      const next = page.getByRole("button", { name: /^Dealt with: / });
      for (let left = 0; left < 40 && (await quiet.count()) === 0 && (await next.count()) > 0; left++) {
        const name = (await next.first().getAttribute("value")) ?? "";
        await next.first().click();
        await expect(page.locator(`button[value="${name}"]`)).toHaveCount(0);
      }
      await expect(page.getByRole("region", { name: "Do next" })).toContainText(
        "What is left are the other lists of this page",
      );
      await expectAccessible(page);
    });
  });
