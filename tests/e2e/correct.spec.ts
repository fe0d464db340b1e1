import { alert, expect, expectAccessible, test } from "./watched";

test("a value is corrected from the season page with a reason, shown with its history, and known as it was", async ({
  page,
}) => {
  await page.goto("/students/s09");
  await page.getByRole("table", { name: "Sessions, latest first" }).getByRole("link").first().click();
  await expectAccessible(page);
  await page.getByRole("link", { name: "Correct, void or add readings" }).click();
  const cell = page.getByRole("textbox", { name: /, swing 1$/ }).first();
  const before = await cell.inputValue();
  await cell.fill("58.5");
  await page.getByRole("button", { name: "Save the corrections" }).click();
  await expect(alert(page)).toContainText("Nothing was saved yet");
  await expect(cell).toHaveValue("58.5");
  await expectAccessible(page);
  await page.getByLabel("Reason").fill("hidden by the arm");
  await page.getByRole("button", { name: "Save the corrections" }).click();
  await expect(page.getByRole("status")).toHaveText("Saved. Everything was judged anew.");
  const change = page.getByRole("row", { name: /hidden by the arm/ });
  await expect(change).toContainText("58.5");
  await page.getByRole("link", { name: "What was known on a day" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("What was known of");
  await page.goto("/students/s09/history");
  await expect(page.getByRole("row", { name: /hidden by the arm/ }).first()).toBeVisible();
  expect(before).not.toBe("58.5");
});

test("without scripts: facts are corrected, and the change is undone by its button", async ({ browser }) => {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto("/students/s09");
  await page.getByRole("table", { name: "Sessions, latest first" }).getByRole("link").nth(1).click();
  await page.getByRole("link", { name: "Correct the facts" }).click();
  await page.getByLabel("Why the session is set aside").fill("rain on the lens");
  await page.getByLabel("Reason").fill("seen late");
  await page.getByRole("button", { name: "Save the facts" }).click();
  await expect(page.getByRole("status")).toContainText("The facts are corrected");
  await page.getByRole("button", { name: "Undo: Facts of a session corrected" }).first().click();
  await expect(page.getByRole("status")).toContainText("Undone: everything is as it was before");
  await expect(page.getByRole("row", { name: /seen late/ }).first()).toContainText("undone by");
  await context.close();
});
