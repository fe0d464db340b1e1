import path from "node:path";
import type { Page } from "playwright/test";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

const PASTED = ["student", "date", "club", "swing", "angle"].join("\t");
const SWINGS = [1, 2].map((swing) => ["Eli", "2026-03-08", "7-iron", swing, 65 + swing].join("\t"));

const title = (page: Page) => page.getByRole("heading", { level: 1 });

async function paste(page: Page, text: string): Promise<void> {
  await page.goto("/import");
  await page.getByRole("textbox", { name: "Or paste a table" }).fill(text);
  await page.getByRole("button", { name: "Read what is pasted" }).click();
}

test("a workbook is read like its CSV: its hidden sheet is named, each column can be changed", async ({ page }) => {
  await page.goto("/import");
  await expectAccessible(page);
  await page.locator("input[type=file]").setInputFiles(path.join(served.root, "seed", "samples", "season.xlsx"));
  await page.getByRole("button", { name: "Read the file" }).click();
  await expect(title(page)).toHaveText(/^0 of 90 rows are ready/);
  await expect(page.getByText(/Hidden in the workbook.*Clubs/)).toBeVisible();
  await expect(page.getByRole("combobox", { name: /Column 8: “value” is/ })).toHaveValue("field:value");
  await expectAccessible(page);
  const rows = await page.request.get(`${page.url().replace("/import/", "/api/import/")}/rows`);
  expect((await rows.text()).split("\r\n")[1]).toMatch(/^2,waits for an answer,/);
});

test("a pasted table: a column that nobody knows is chosen by the keyboard, and the table is read anew", async ({
  page,
}) => {
  await paste(page, [PASTED, ...SWINGS].join("\n"));
  await expect(page.getByText(/No column holds readings/)).toBeVisible();
  const column = page.getByRole("combobox", { name: /Column 5: “angle” is/ });
  await column.focus();
  await page.keyboard.type("Wrist hinge");
  await expect(column).toHaveValue("fundamental:hinge");
  await page.getByRole("button", { name: "Read anew with these columns" }).press("Enter");
  await expect(title(page)).toHaveText("2 of 2 rows are ready");
  await expect(page.getByRole("combobox", { name: /Column 5: “angle” in/ })).toHaveValue("deg");
  await page.getByRole("combobox", { name: /Column 5: “angle” in/ }).selectOption("rad");
  // A changed column is shown before anything is saved.
  await page.getByRole("button", { name: "Import 2 rows" }).click();
  await expect(page.getByText(/turned from radians into degrees/)).toBeVisible();
  await page.getByRole("button", { name: "Drop this file" }).click();
  await expect(title(page)).toHaveText("Import values");
});

test("without scripts: paste, choose, see; something that is no table is refused by what it is", async ({
  browser,
  watch,
}) => {
  watch.provoked.push(/status of 415/);
  const context = await browser.newContext({ javaScriptEnabled: false, baseURL: served.address });
  const plain = await context.newPage();
  await paste(plain, [PASTED, ...SWINGS].join("\n"));
  await plain.getByRole("combobox", { name: /Column 5: “angle” is/ }).selectOption("fundamental:hinge");
  await plain.getByRole("button", { name: "Read anew with these columns" }).click();
  await expect(title(plain)).toHaveText("2 of 2 rows are ready");
  await plain.goto("/import");
  const picture = { name: "season.csv", mimeType: "text/csv", buffer: Buffer.from("GIF89a, not a table") };
  await plain.locator("input[type=file]").setInputFiles(picture);
  await plain.getByRole("button", { name: "Read the file" }).click();
  await expect(plain.getByText("This is a picture.")).toBeVisible();
  await context.close();
});
