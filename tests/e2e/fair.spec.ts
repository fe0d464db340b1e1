import path from "node:path";
import { openDatabase } from "@/db/client";
import { addStudent } from "./add-student";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

// A director plans a test of two drills; a coach lets the lot say which one a student gets, in two taps.

test.afterAll(() => {
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"));
  try {
    // Other files give drills on pages where no test stands.
    for (const table of ["fair_value", "fair_step", "fair_allocation", "fair_test"])
      db.sqlite.prepare(`DELETE FROM ${table}`).run();
    db.sqlite.prepare("DELETE FROM drill_assignment WHERE student_id = 's21'").run();
  } finally {
    db.close();
  }
});

test("a test by the lot is planned, drawn in two taps where a drill is given, and ended", async ({ page }) => {
  const student = await addStudent(page, "Lotte");
  await page.goto(`${student}/drills/new?for=hinge`);
  await page.getByLabel("Which").selectOption({ label: "A new drill" });
  await page.locator("summary", { hasText: "A new drill" }).click();
  await page.getByLabel("Name", { exact: true }).fill("Mirror hold");
  await page.getByLabel("How it goes").fill("Hold it in front of a mirror.");
  await page.getByRole("button", { name: "Start the drill" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("Mirror hold");

  await page.goto("/drills");
  await page.getByRole("link", { name: "Test two drills by the lot" }).click();
  await page.waitForURL(/\/drills\/lot\?draft=/);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("No test by the lot runs");
  await page.getByRole("button", { name: "Plan it" }).click();
  await expect(page.getByRole("alert").first()).toContainText("No test is planned yet");
  await page.getByLabel("First drill").selectOption({ label: "Half-way freeze, for Wrist hinge" });
  await page.getByLabel("Second drill").selectOption({ label: "Mirror hold, for Wrist hinge" });
  await page.getByLabel("Least difference worth finding").fill("4");
  await page.getByLabel("Spread of gains").fill("5");
  await page.getByRole("button", { name: "Work it out anew" }).click();
  await expect(page.getByText(/it takes \d+ students, both drills together; 5.0° is taken/)).toBeVisible();
  await page.getByRole("button", { name: "Plan it" }).click();
  await expect(page.getByRole("status").first()).toContainText("The test is planned");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("One test by the lot runs");
  for (const width of [320, 390, 768, 1440]) {
    await page.setViewportSize({ width, height: 900 });
    const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect([width, over <= 0]).toEqual([width, true]);
    await expectAccessible(page);
  }

  await page.goto("/students/s21/drills/new?for=hinge");
  await expect(page.getByRole("heading", { name: "Let the lot say: Half-way freeze or Mirror hold?" })).toBeVisible();
  await expectAccessible(page);
  await page.getByRole("button", { name: "Draw" }).click();
  const drawn = page.getByRole("heading", { name: /^The lot says / });
  await expect(drawn).toBeVisible();
  const drill = ((await drawn.textContent()) ?? "").replace("The lot says ", "");
  await expect(page.getByLabel("Which").locator("option:checked")).toContainText(drill);
  await page.getByRole("button", { name: "Start the drill" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText(drill);

  await page.goto("/drills/lot");
  await expect(page.getByText(/1 of \d+ students/)).toBeVisible();
  await expect(page.getByRole("button", { name: /^Take look/ })).toHaveCount(0);
  await page.getByRole("button", { name: "End the test of Half-way freeze and Mirror hold for good" }).click();
  await expect(page.getByText(/^Ended early on 12 Sep 2026/)).toBeVisible();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("No test by the lot runs");
});

test.describe("without scripts", () => {
  test.use({ javaScriptEnabled: false });

  test("what a plan takes is worked out with a press, and what is typed stays", async ({ page }) => {
    await page.goto("/drills/lot");
    await page.getByLabel("Least difference worth finding").fill("3");
    await page.getByRole("button", { name: "Work it out anew" }).click();
    await expect(page.getByLabel("Least difference worth finding")).toHaveValue("3");
  });
});
