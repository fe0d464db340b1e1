import path from "node:path";
import { openDatabase } from "@/db/client";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

const WIDTHS = [320, 390, 768, 1440];
const PAGES = ["events", "events/new?kind=injury", "practice", "drills", "drills/new", "read-back"];

function one(sql: string): unknown {
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"), "read");
  try {
    return db.sqlite.prepare<[], unknown>(sql).pluck().get();
  } finally {
    db.close();
  }
}

test("every page of what happened holds at 320 to 1440 px and can be read by everyone", async ({ page }) => {
  const event = one("SELECT id FROM event WHERE student_id = 's01'");
  const given = one("SELECT id FROM drill_assignment WHERE student_id = 's01'");
  const draw = one("SELECT id FROM read_back WHERE student_id = 's01'");
  for (const address of [...PAGES, `events/${event}`, `drills/${given}`, `read-back/${draw}`]) {
    await page.goto(`/students/s01/${address}`);
    await expectAccessible(page);
    for (const width of WIDTHS) {
      await page.setViewportSize({ width, height: 900 });
      const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect([address, width, over]).toEqual([address, width, expect.any(Number)]);
      expect(over).toBeLessThanOrEqual(0);
    }
  }
});

test("an event is recorded, begins a track anew, is judged on again and undone, without scripts", async ({
  browser,
}) => {
  const context = await browser.newContext({ javaScriptEnabled: false, baseURL: served.address });
  const page = await context.newPage();
  await page.goto("/students/s02/events/new?kind=new-club");
  await page.getByLabel("Day", { exact: true }).fill("2026-06-01");
  await page.getByLabel("Note").fill("Half an inch longer.");
  await page.getByRole("button", { name: "Record the event" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Bea: new clubs, 1 Jun");
  await expect(page.getByRole("heading", { name: "It is drawn, and nothing begins anew" })).toBeVisible();
  const box = page.getByRole("checkbox", { name: /^Wrist hinge begins anew/ });
  await box.check();
  await page.getByLabel("Why").fill("Longer shafts");
  await page.getByRole("button", { name: "Change what begins anew" }).click();
  await expect(page.getByRole("heading", { name: "One track begins anew" })).toBeVisible();
  for (const ticked of await page.getByRole("checkbox", { checked: true }).all()) await ticked.uncheck();
  await page.getByLabel("Why").fill("Not longer after all");
  await page.getByRole("button", { name: "Change what begins anew" }).click();
  await expect(page.getByRole("heading", { name: "2 changes of what begins anew" })).toBeVisible();
  await page.getByRole("button", { name: "Undo this event" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("undone");
  await context.close();
});

test("practice is logged in a few keys and taken back; its bars stand on the chart", async ({ page }) => {
  await page.goto("/students/s06/practice");
  await page.getByLabel("Minutes, Sat 12 Sep").fill("15");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Fay practised on one day");
  await page.goto("/students/s06/hip-sway");
  await expect(page.getByText("practice, minutes a week, 15 at most").first()).toBeAttached();
  await page.goto("/students/s06/practice");
  await page.getByRole("button", { name: "Undo 12 Sep" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("No practice logged of Fay");
});

test("an open read-back keeps what is typed as it is typed, and shows no day of a film", async ({ page }) => {
  await page.goto(`/students/s01/read-back/${one("SELECT id FROM read_back WHERE student_id = 's01'")}`);
  const empty = page.locator("input[name='v.12']");
  await empty.fill("11.5");
  await expect(page.getByRole("status").first()).toHaveText(/^Kept .*\d\d:\d\d$/);
  await page.reload();
  await expect(page.locator("input[name='v.12']")).toHaveValue("11.5");
  const words = (await page.locator("main").textContent()) ?? "";
  for (const month of ["Mar", "Apr", "May", "Jun", "Jul", "Aug"]) expect(words).not.toMatch(new RegExp(`\\d ${month}`));
});
