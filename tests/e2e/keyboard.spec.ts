import type { Page } from "playwright/test";
import { withDemo } from "../trust/demo-roles";
import { type KeyboardWay, pressAt, tabTo as tabThere } from "./by-keyboard";
import { served } from "./served";
import { expect, test } from "./watched";

// X1: by keyboard alone. Where the focus is, it is seen, and nothing lies over it.

const way: KeyboardWay = { faults: [], steps: 0 };
const tabTo = (page: Page, name: RegExp | string) => tabThere(way, page, name);
const go = (page: Page, name: RegExp | string) => pressAt(way, page, name);

test("X1: signing in, recording, correcting and importing by keyboard alone", async ({ browser, page }) => {
  test.setTimeout(120_000);
  const context = await browser.newContext({ baseURL: served.address, storageState: { cookies: [], origins: [] } });
  const first = await context.newPage();
  await first.goto("/sign-in");
  await go(first, "Look as Coach Wren");
  await first.waitForURL("**/students");
  await context.close();

  await page.goto("/students/s12");
  await go(page, "Add a session");
  await page.waitForURL(/\/sessions\/new/);
  await tabTo(page, /, swing 1$/);
  await page.keyboard.type("60");
  await go(page, "Save the session");
  await page.waitForURL(/\/saved$/);
  await go(page, "This session");
  await page.waitForURL(/\/sessions\/[^/]+$/);

  const session = withDemo((db) =>
    db.sqlite
      .prepare<[], string>("SELECT id FROM session WHERE student_id = 's12' ORDER BY created_at DESC LIMIT 1")
      .pluck()
      .get(),
  );
  await page.goto(`/students/s12/sessions/${session}/correct`);
  await tabTo(page, /, swing 1$/);
  await page.keyboard.press("ControlOrMeta+A");
  await page.keyboard.type("58.5");
  await tabTo(page, /^Reason/);
  await page.keyboard.type("misread");
  await go(page, "Save the corrections");
  await expect(page.getByText("Saved. Everything was judged anew.")).toBeVisible();

  await page.goto("/import");
  await tabTo(page, /paste/i);
  await page.keyboard.insertText("student,date,club,swing,fundamental,value\nNobody,2026-01-05,7-iron,1,hinge,8o\n");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.waitForURL(/\/import\/[0-9a-f-]{36}/);
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  expect(way.faults).toEqual([]);
  console.log(`X1: 4 acts, ${way.steps} steps of the Tab key`);
});
