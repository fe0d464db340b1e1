import path from "node:path";
import { served } from "./served";
import { alert, expect, expectAccessible, test } from "./watched";

test("a sample is imported, stands in the list with what was answered, and is undone whole", async ({ page }) => {
  await page.goto("/import");
  await page.locator("#import-file").setInputFiles(path.join(served.root, "seed/samples/season-long.csv"));
  await page.getByRole("button", { name: "Read the file" }).click();
  await page.getByRole("radio", { name: "A new student, right-handed" }).first().check();
  const givenBy = page.locator('input[name^="answer-givenBy:"]').first();
  await givenBy.fill("herself");
  await page.getByRole("button", { name: "Keep these answers" }).click();
  await page.getByRole("button", { name: /^Import 90 rows/ }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("90 readings");

  await page.goto("/import");
  await page.getByRole("link", { name: "See what was imported" }).click();
  await expectAccessible(page);
  await page.getByRole("link", { name: "Open “season-long.csv”" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("“season-long.csv” brought 90 readings");
  await expect(page.getByRole("rowheader", { name: "Nia (new)" })).toBeVisible();
  await expectAccessible(page);
  await page.getByRole("button", { name: "Undo the import" }).click();
  await expect(alert(page)).toContainText("Tick the box first");
  await page.getByLabel("Yes, undo 90 readings").check();
  await page.getByRole("button", { name: "Undo the import" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("“season-long.csv” is undone");
  await page.getByRole("link", { name: "Read “season-long.csv” again" }).click();
  await expect(page.getByRole("button", { name: /^Import 90 rows/ })).toBeVisible();
  await page.getByRole("button", { name: "Drop this file" }).click();
  await expect(page).toHaveURL(`${served.address}/import`);
});
