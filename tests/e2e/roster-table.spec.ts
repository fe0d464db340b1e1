import type { Locator, Page } from "playwright/test";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

const WIDTHS = [320, 390, 768, 1440];
const roster = (page: Page): Locator => page.locator("#roster");
const names = (page: Page): Promise<string[]> => roster(page).locator("tbody th a").allInnerTexts();

async function expectNoSidewaysScroll(page: Page): Promise<void> {
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 900 });
    const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(over).toBeLessThanOrEqual(0);
  }
  await page.setViewportSize({ width: 1440, height: 900 });
}

test.describe
  .serial("the roster's table", () => {
    test("is searched and filtered by a form without scripts, and the address holds it all", async ({ browser }) => {
      const context = await browser.newContext({
        javaScriptEnabled: false,
        baseURL: served.address,
        storageState: served.signedIn,
      });
      const page = await context.newPage();
      await page.goto("/students");
      const everybody = await names(page);
      await page.getByLabel("Find by name").fill("AR");
      await page.getByText("Filter and sort", { exact: true }).click();
      await page.getByRole("combobox", { name: "Sort", exact: true }).selectOption({ label: "by name" });
      await page.getByRole("combobox", { name: "Where it is" }).selectOption({ label: "inside" });
      await page.getByRole("button", { name: "Show", exact: true }).click();
      expect(new URL(page.url()).searchParams.get("q")).toBe("AR");
      const found = await names(page);
      expect(found).toContain("Ari");
      expect(found.every((name) => name.toLowerCase().includes("ar"))).toBe(true);
      expect(found).toEqual([...found].sort());
      expect(found.length).toBeLessThan(everybody.length);
      // Others' tests add students meanwhile.
      await expect(roster(page)).toContainText(new RegExp(`${found.length} of \\d+ students, by name`));
      const address = page.url();
      await page.goto(address);
      expect(await names(page)).toEqual(found);
      await page.getByRole("link", { name: /without the name “AR”/ }).click();
      await expect.poll(async () => (await names(page)).length).toBeGreaterThan(found.length);
      await context.close();
    });

    test("a column's head puts the rows in its order, keeps the filters and says which order holds, without scripts", async ({
      browser,
    }) => {
      const context = await browser.newContext({
        javaScriptEnabled: false,
        baseURL: served.address,
        storageState: served.signedIn,
      });
      const page = await context.newPage();
      await page.goto("/students?place=outside&sort=work");
      const table = roster(page).getByRole("table");
      const sorted = () => table.locator("th[aria-sort]").evaluateAll((all) => all.map((each) => each.ariaSort));
      const byNeed = await names(page);
      expect(await sorted()).toEqual(["other"]);
      const press = async (head: RegExp, sort: string): Promise<string[]> => {
        await table.getByRole("columnheader", { name: head }).getByRole("link").click();
        await page.waitForURL((url) => url.searchParams.get("sort") === sort);
        expect(new URL(page.url()).searchParams.get("place")).toBe("outside");
        return names(page);
      };
      const byName = await press(/^Student/, "name");
      expect(byName).toEqual([...byName].sort((a, b) => a.localeCompare(b, "en", { numeric: true })));
      expect([...byName].sort()).toEqual([...byNeed].sort());
      expect(await sorted()).toEqual(["ascending"]);
      const latest = await press(/^Last film/, "last");
      expect(await sorted()).toEqual(["descending"]);
      const stalest = await press(/^Last film/, "stale");
      expect(await sorted()).toEqual(["ascending"]);
      expect(stalest).not.toEqual(latest);
      expect(await press(/^In hand/, "work")).toEqual(byNeed);
      await context.close();
    });

    test("the file holds exactly the rows of the address, in their order", async ({ page }) => {
      await page.goto("/students?place=outside&sort=name");
      const rows = await names(page);
      expect(rows.length).toBeGreaterThan(2);
      const link = roster(page)
        .getByRole("link", { name: "Download as CSV" })
        .or(roster(page).locator('a[href^="/api/roster/csv"]'));
      const answer = await page.request.get((await link.first().getAttribute("href")) ?? "");
      const lines = (await answer.text()).trimEnd().split("\r\n").slice(1);
      expect([...new Set(lines.map((line) => line.split(",")[0]))]).toEqual(rows);
    });

    test("where nobody is left it says which filter to drop", async ({ page }) => {
      await page.goto("/students?q=nobody%20has%20this&sort=work");
      await expect(roster(page).getByRole("heading", { name: "Nobody answers all of these filters" })).toBeVisible();
      await expect(roster(page).locator("tbody")).toHaveCount(0);
      await expectAccessible(page);
      await expectNoSidewaysScroll(page);
      await roster(page)
        .getByRole("link", { name: /^without the name .*: \d+ students$/ })
        .click();
      await expect.poll(async () => (await names(page)).length).toBeGreaterThan(50);
    });

    test("a view is kept, opens the roster and says so, leads back, and is forgotten", async ({ page }) => {
      await page.goto("/students?place=outside&sort=last");
      const mine = await names(page);
      await page.getByRole("button", { name: "Keep this view" }).click();
      await expect(page.getByText("The view is kept: your roster opens like this.")).toBeVisible();
      await page.goto("/students");
      await expect(roster(page)).toContainText("This is the view that you keep.");
      expect(await names(page)).toEqual(mine);
      await roster(page)
        .getByRole("link", { name: /^All \d+ students, by need$/ })
        .click();
      await expect.poll(async () => (await names(page)).length).toBeGreaterThan(mine.length);
      await roster(page).getByRole("link", { name: "Back to my view" }).click();
      await expect.poll(() => names(page)).toEqual(mine);
      await page.getByRole("button", { name: "Forget my view" }).click();
      await expect(page.getByRole("button", { name: "Forget my view" })).toHaveCount(0);
      await expect.poll(async () => (await names(page)).length).toBeGreaterThan(mine.length);
    });

    test("by keyboard: past everything to the students, then from row to row and from strip to strip by arrows", async ({
      page,
    }) => {
      await page.goto("/students?sort=name");
      await page.getByRole("link", { name: "To the students" }).press("Enter");
      await expect(page).toHaveURL(/#roster$/);
      const rows = roster(page).locator("tbody tr");
      const first = rows.nth(0).locator("a");
      await first.nth(0).focus();
      await page.keyboard.press("ArrowDown");
      await expect(rows.nth(1).locator("a").nth(0)).toBeFocused();
      await page.keyboard.press("ArrowUp");
      await page.keyboard.press("ArrowRight");
      await expect(first.nth(1)).toBeFocused();
      await page.keyboard.press("ArrowLeft");
      await page.keyboard.press("ArrowUp");
      await expect(first.nth(0)).toBeFocused();
    });

    test("holds at every width and accessibility finds nothing, filters open and shut", async ({ page }) => {
      for (const address of [
        "/students?sort=name",
        "/students?place=edge&stale=14&show=stalled&sort=last&second=open",
      ]) {
        await page.goto(address);
        await expectAccessible(page);
        await expectNoSidewaysScroll(page);
      }
    });
  });
