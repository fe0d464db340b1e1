import path from "node:path";
import { openDatabase } from "@/db/client";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

// Every sort of form keeps what is half typed: on a page of its own, as a part of one, and in a table.

function one(query: string): string {
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"), "read");
  try {
    return db.sqlite.prepare<[], string>(query).pluck().get() ?? "";
  } finally {
    db.close();
  }
}

const session = (): string =>
  `/students/s09/sessions/${one("SELECT id FROM session WHERE student_id = 's09' LIMIT 1")}`;

/** The page, the field, and what is typed into it by half. */
const FORMS: readonly (readonly [string, () => string, string, string])[] = [
  ["corrections", () => `${session()}/correct`, '[name="why"]', "arm in fr"],
  ["facts", () => `${session()}/facts`, '[name="note"]', "wind from th"],
  ["a move", () => `${session()}/move`, '[name="why"]', "not he"],
  ["a merge", () => "/students/s09/merge", '[name="why"]', "entered tw"],
  ["practice", () => "/students/s09/practice", '[name^="minutes."]', "2o"],
  ["a draw", () => "/rereads/new", '[name="count"]', "1x"],
  ["a key", () => "/settings/keys", '[name="name"]', "The ba"],
  ["settings", () => "/settings", '[name="ownerName"]', "Coach Ha"],
];

for (const [what, address, field, typed] of FORMS) {
  test(`${what}: half typed, it stands there after a reload, and whoever begins anew is told`, async ({ page }) => {
    await page.setViewportSize({ width: 390, height: 800 });
    await page.goto(address());
    await page.waitForURL(/[?&]draft=/);
    const filled = page.url();
    await page.locator(field).first().fill(typed);
    await expect(page.getByRole("status").first()).toHaveText(/^Kept .*\d\d:\d\d$/);
    await page.reload();
    await expect(page.locator(field).first()).toHaveValue(typed);
    expect(page.url()).toBe(filled);
    await page.goto(address());
    await expect(page.locator(field).first()).not.toHaveValue(typed);
    await expect(page.getByRole("link", { name: "Go on" }).first()).toHaveAttribute("href", /draft=/);
    await expectAccessible(page);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth > window.innerWidth);
    expect(wide).toBe(false);
    await page.getByText("Drop it …").first().click();
    await page.getByRole("button", { name: "Yes, drop it" }).first().click();
    await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeVisible();
  });
}

test("without scripts a press that the disk takes nothing of leads to a page that says so and leads back", async ({
  browser,
}) => {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto("/not-saved?why=busy&back=%2Fsettings%2Fkeys");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Nothing was saved");
  await page.getByRole("link", { name: "Go back" }).click();
  await expect(page).toHaveURL(/\/settings\/keys/);
  await page.goto("/not-saved?why=full&back=%2F%2Felsewhere.invalid");
  await expect(page.getByRole("link", { name: "Go back" })).toHaveAttribute("href", "/record");
  await context.close();
});
