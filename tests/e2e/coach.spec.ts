import path from "node:path";
import type { Page } from "playwright/test";
import { digestTables } from "@/db/backup";
import { openDatabase } from "@/db/client";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

const WIDTHS = [390, 768, 1440];

async function expectNoSidewaysScroll(page: Page): Promise<void> {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(over).toBeLessThanOrEqual(0);
}

async function readingsDigest(): Promise<unknown> {
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"), "read");
  try {
    return await digestTables(db, [
      "reading",
      "correction",
      "session",
      "swing",
      "capture",
      "student",
      "look_noise",
      "seen",
    ]);
  } finally {
    db.close();
  }
}

test.describe
  .serial("a coach on the demo", () => {
    test("roster, season and one fundamental say the same level, with scripts and at every width", async ({ page }) => {
      await page.goto("/students");
      await expect(page.getByText(/Demo academy\. Every student here is invented/)).toBeVisible();
      // What the brief says of Ari may lead elsewhere: to the family's links, where another test has put some.
      await page.locator('a[href="/students/s01"]').first().click();
      await expect(page.getByRole("heading", { level: 1 })).toContainText("Ari");
      const row = page
        .getByRole("region", { name: "The evidence" })
        .getByRole("listitem")
        .filter({ has: page.getByRole("link", { name: "Trail-hand V" }) });
      const level = await row.locator("dd").first().textContent();
      await row.getByRole("link", { name: "Trail-hand V" }).click();
      await expect(page.getByRole("heading", { level: 1 })).toHaveText("Ari: Trail-hand V, a real gain");
      await expect(page.getByText(`The level is ${level}`)).toBeVisible();
      await page.getByText("Table", { exact: true }).click();
      await expect(page.getByRole("table").first()).toBeVisible();
      for (const width of WIDTHS)
        for (const address of ["/students", page.url(), page.url().replace(/\/trail-v.*/, "")]) {
          await page.setViewportSize({ width, height: 900 });
          await page.goto(address);
          await expectNoSidewaysScroll(page);
        }
      await page.setViewportSize({ width: 1440, height: 900 });
    });

    test("the chart is whole on the server, and the live one takes its place without moving anything", async ({
      page,
    }) => {
      await page.goto("/students/s01/trail-v");
      const box = page.locator("[data-chart]");
      await expect(box).toHaveAttribute("data-chart", "live");
      const height = (await box.boundingBox())?.height ?? 0;
      expect(height).toBeGreaterThan(300);
      const dots = await page.locator("[data-chart] .recharts-scatter-symbol").count();
      const html = await (await page.request.get("/students/s01/trail-v")).text();
      expect(html).toContain("<svg");
      expect(dots).toBeGreaterThan(10);
      await expectAccessible(page);
    });

    test("looking at pages changes no reading, no look and no pressing of seen (20 views)", async ({ page }) => {
      const before = await readingsDigest();
      for (let view = 0; view < 10; view++) {
        await page.goto("/students");
        await page.goto(`/students/s0${(view % 9) + 1}`);
      }
      expect(await readingsDigest()).toEqual(before);
    });

    test("pressing seen puts away what is proved; the roster then says that nothing is new", async ({ page }) => {
      await page.goto("/students");
      await expect(page.getByRole("table").first()).toContainText("Real gain");
      await page.getByRole("button", { name: "Seen" }).click();
      await expect(page.getByRole("heading", { name: "Nothing new", exact: true })).toBeVisible();
      await expectAccessible(page);
    });

    test("an open question is planned, dropped, given up and asked again, with the keyboard and without scripts", async ({
      page,
      browser,
    }) => {
      await page.goto("/students/s04/hip-sway");
      await page.getByRole("button", { name: "Plan these films" }).press("Enter");
      await expect(
        page.getByRole("heading", { name: /^None of (one planned film has|\d planned films have) come$/ }),
      ).toBeVisible();
      await expectAccessible(page);
      await page.goto("/students/s04");
      await expect(page.getByRole("table", { name: "Open questions" })).toContainText(/Planned 12 Sep: 0 of \d films/);
      await page.goto("/students/s04/hip-sway");
      await page.getByRole("button", { name: "Drop this plan" }).press("Enter");
      await expect(page.getByRole("button", { name: "Plan these films" })).toBeVisible();
      const context = await browser.newContext({ javaScriptEnabled: false, baseURL: served.address });
      const plain = await context.newPage();
      await plain.goto("/students/s01/foot-line");
      await plain.getByRole("button", { name: "Stop asking this" }).click();
      await expect(plain.getByRole("heading", { name: "You stopped asking on Sat 12 Sep 2026" })).toBeVisible();
      await plain.goto("/students/s01");
      await expect(plain.getByRole("table", { name: "Open questions" })).toContainText("Not asked since 12 Sep");
      await plain.goto("/students/s01/foot-line");
      await plain.getByRole("button", { name: "Ask again" }).click();
      await expect(plain.getByRole("button", { name: "Stop asking this" })).toBeVisible();
      await context.close();
    });

    test("a sibling's film is no gain: Eli's tilts and hinge are not called changed, and the phone is named", async ({
      page,
    }) => {
      for (const fundamental of ["setup-tilt", "top-tilt", "hinge"]) {
        await page.goto(`/students/s05/${fundamental}`);
        await expect(page.getByRole("heading", { level: 1 })).not.toContainText("real");
        await expect(
          page.getByText(/jumped together.*about 8° too far toward the target.*is widened here/),
        ).toBeVisible();
      }
      await page.goto("/students/s05");
      await expect(page.getByText(/jumped together.*about 8° too far toward the target/)).toBeVisible();
      await expect(page.getByRole("row", { name: /Fri 19 Jun 2026/ })).toContainText(
        "phone seems about 7° off, face-on",
      );
    });
  });
