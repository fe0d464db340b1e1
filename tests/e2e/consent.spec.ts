import path from "node:path";
import { openDatabase } from "@/db/client";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

const WIDTHS = [320, 390, 768, 1440];

function aliasOf(id: string): string {
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"), "read");
  try {
    return db.sqlite.prepare<[string], string>("SELECT alias FROM student WHERE id = ?").pluck().get(id) ?? "";
  } finally {
    db.close();
  }
}

test("every page of consent and keeping holds at 320 to 1440 px and can be read by everyone", async ({ page }) => {
  const student = ["consent", "consent/withdraw", "departed"].map((room) => `/students/s01/${room}`);
  for (const address of [...student, "/students/s59/consent", "/settings/privacy"]) {
    await page.goto(address);
    await expectAccessible(page);
    for (const width of WIDTHS) {
      await page.setViewportSize({ width, height: 900 });
      const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect([address, width, over]).toEqual([address, width, expect.any(Number)]);
      expect(over).toBeLessThanOrEqual(0);
    }
  }
});

test("the roster and the season say whose consent has ended, and lead to where it is asked anew", async ({ page }) => {
  const alias = aliasOf("s59");
  await page.goto("/students");
  const part = page.getByRole("region", { name: "Consent" });
  await expect(part).toContainText(`The consent to measure ${alias} ended`);
  await part.getByRole("link", { name: alias }).click();
  await expect(page).toHaveURL(/\/students\/s59\/consent/);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(`Nothing new may be recorded of ${alias}`);
  await expect(page.getByLabel("A message that asks for consent")).toHaveValue(/May we measure, from .* to .*\?/);
});

test("without scripts a consent is withdrawn, what is typed then is refused and kept, and it is given anew", async ({
  browser,
}) => {
  const signedIn = served.signedIn;
  const context = await browser.newContext({
    ...{ javaScriptEnabled: false, baseURL: served.address, storageState: signedIn },
  });
  const page = await context.newPage();
  const alias = aliasOf("s57");
  await page.goto("/students/s57/consent");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(`${alias} may be measured`);
  await page.getByRole("link", { name: "Withdraw a consent" }).click();
  await page.getByRole("checkbox", { name: "To measure" }).check();
  await page.getByRole("button", { name: "Withdraw it" }).click();
  await expect(page.getByRole("alert")).toContainText("This is needed");
  await page.getByLabel("Said by").fill("the father");
  await page.getByRole("button", { name: "Withdraw it" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(`Nothing new may be recorded of ${alias}`);
  await expect(page.getByRole("cell", { name: "the father" })).toBeVisible();

  await page.goto("/students/s57/practice");
  await page.getByLabel("Minutes, Sat 12 Sep").fill("17");
  await page.getByRole("button", { name: "Log it" }).click();
  await expect(page.getByRole("alert")).toContainText("was withdrawn on");
  await expect(page.getByLabel("Minutes, Sat 12 Sep")).toHaveValue("17");

  await page.goto("/students/s57/consent");
  await page.getByRole("checkbox", { name: "To measure" }).check();
  await page.getByLabel("Given by").fill("the mother");
  await page.getByRole("checkbox", { name: "I hold this consent on paper." }).check();
  await page.getByRole("button", { name: "Enter this consent" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(`${alias} may be measured`);
  await context.close();
});

test("whoever has left is hidden on the roster behind one link, and comes back", async ({ page }) => {
  const alias = aliasOf("s56");
  await page.goto("/students/s56/departed");
  await page.getByLabel("Left on").fill("2026-09-01");
  await page.getByRole("button", { name: "Keep this" }).click();
  await page.waitForURL("**/students/s56/consent");
  await page.goto("/students?sort=name");
  await expect(page.getByRole("link", { name: alias, exact: true })).toHaveCount(0);
  await page.getByRole("link", { name: /^One student has left/ }).click();
  await expect(page.getByRole("link", { name: alias, exact: true }).first()).toBeAttached();
  await page.goto("/students/s56/departed");
  await page.getByLabel("Left on").fill("");
  await page.getByRole("button", { name: "Keep this" }).click();
  await page.waitForURL("**/students/s56/consent");
  await page.goto("/students?sort=name");
  await expect(page.getByRole("link", { name: /ha(s|ve) left/ })).toHaveCount(0);
});
