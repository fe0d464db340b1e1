import { expect, expectAccessible, test } from "./watched";

const FORM = "/students/s05/sessions/new";

test("a note is read while it is typed, corrected with one tap, remembered, and undone", async ({ page }) => {
  await page.goto(FORM);
  await page.getByLabel("Note", { exact: true }).fill("7 of 10 solid, some fat. No shanks; 2 lateral. Heavy legs");
  await expect(page.getByText("7 of 10, solid")).toBeVisible();
  await expect(page.getByText("named, not counted (fat)")).toBeVisible();
  await expect(page.getByText("left out: not the ball")).toBeVisible();
  await page.getByRole("button", { name: "Put 7 solid of 10 into the fields" }).click();
  await expect(page.getByLabel("Solid strikes", { exact: true })).toHaveValue("7");
  await expect(page.getByLabel("Balls hit", { exact: true })).toHaveValue("10");
  const lateral = page.getByRole("listitem").filter({ hasText: "2, heel or shank" });
  await lateral.getByRole("button", { name: "Not so" }).click();
  await expect(page.getByText("left out: this academy said that it is no strike")).toBeVisible();
  await expectAccessible(page);
  await page.goto("/settings/notes");
  await expect(page.getByRole("row", { name: /# lateral.*no strike/ }).first()).toBeVisible();
  await expectAccessible(page);
  await page.getByRole("button", { name: /^Undo “/ }).click();
  await expect(page.getByText("Nothing was corrected")).toBeVisible();
});

test("without scripts a button reads the note and puts in what was ticked, with everything typed kept", async ({
  browser,
}) => {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto(FORM);
  await page.getByLabel("Note", { exact: true }).fill("7 of 10 solid");
  await page.getByLabel("Club", { exact: true }).fill("7-iron");
  await page.getByRole("button", { name: "Show what the note says" }).click();
  await expect(page.getByText("7 of 10, solid")).toBeVisible();
  await page.getByLabel("Put 7 solid of 10 into the fields").check();
  await page.getByRole("button", { name: "Show what the note says" }).click();
  await expect(page.getByLabel("Solid strikes", { exact: true })).toHaveValue("7");
  await expect(page.getByLabel("Club", { exact: true })).toHaveValue("7-iron");
  await context.close();
});

test("a wrong count is corrected with one tap, kept with the note, and taken back on the session's page", async ({
  page,
}) => {
  await page.goto(FORM);
  await page.getByLabel("Note", { exact: true }).fill("thin x3, 2/5 fat");
  const thin = page.getByRole("listitem").filter({ hasText: "thin" });
  await thin.getByText("Not 3", { exact: true }).click();
  const two = thin.getByRole("button", { name: "2, thin or topped", exact: true });
  const box = await two.boundingBox();
  expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(24);
  await two.focus();
  await page.keyboard.press("Enter");
  await expect(thin.getByText("2, thin or topped (corrected in this note)")).toBeVisible();
  await expectAccessible(page);
  await page
    .getByRole("textbox", { name: /, swing 1$/ })
    .first()
    .fill("n/m");
  await page.getByRole("button", { name: "Save the session" }).click();
  await expect(page).toHaveURL(/\/saved$/);
  await page.goto(page.url().replace(/saved$/, "note"));
  await expect(page.getByText("2, thin or topped (corrected in this note)")).toBeVisible();
  await expectAccessible(page);
  const fat = page.getByRole("listitem").filter({ hasText: /2(?: of 5)?, fat/ });
  await fat.getByText("Not 2", { exact: true }).click();
  await fat.getByRole("button", { name: "2, but not of 5" }).click();
  await expect(fat.getByText("2, fat (corrected in this note)")).toBeVisible();
  await fat.getByRole("button", { name: "Undo this" }).click();
  await expect(fat.getByText("2 of 5, fat")).toBeVisible();
});

for (const javaScriptEnabled of [true, false])
  test(`in a group's form a note is read and its count corrected, scripts ${javaScriptEnabled ? "on" : "off"}`, async ({
    browser,
  }) => {
    const context = await browser.newContext({ javaScriptEnabled });
    const page = await context.newPage();
    await page.goto("/record/group?student=s01&student=s05");
    const note = page.locator("#note-s05");
    await page.locator('[name="s.s05.note"]').fill("thin x3");
    const check = note.getByRole("button", { name: "Show what the note says" });
    if (!javaScriptEnabled) await check.click();
    await expect(note.getByText("3, thin or topped")).toBeVisible();
    await note.getByText("Not 3", { exact: true }).click();
    if (javaScriptEnabled) await note.getByRole("button", { name: "2, thin or topped", exact: true }).click();
    else {
      await note.getByRole("checkbox", { name: "2, thin or topped", exact: true }).check();
      await check.click();
    }
    await expect(note.getByText("2, thin or topped (corrected in this note)")).toBeVisible();
    await expect(page.locator("#note-s01").getByText("thin or topped")).toHaveCount(0);
    if (javaScriptEnabled) await expectAccessible(page);
    await context.close();
  });

for (const javaScriptEnabled of [true, false])
  test(`a group session that is refused keeps what was typed, scripts ${javaScriptEnabled ? "on" : "off"}`, async ({
    browser,
  }) => {
    const context = await browser.newContext({ javaScriptEnabled });
    const page = await context.newPage();
    await page.goto("/record");
    await page.getByRole("link", { name: "Record a group session" }).click();
    await page.getByRole("checkbox", { name: "Ari", exact: true }).check();
    await page.getByRole("checkbox", { name: "Eli", exact: true }).check();
    await page.getByRole("checkbox", { name: "Wrist hinge" }).check();
    if (javaScriptEnabled) await expectAccessible(page);
    await page.getByRole("button", { name: "On to the form" }).click();
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("A session of 2 students");
    await page.getByLabel("Ari: Wrist hinge, swing 1", { exact: true }).fill("88");
    await page.getByLabel("Eli: Wrist hinge, swing 1", { exact: true }).fill("eighty");
    if (javaScriptEnabled) await expectAccessible(page);
    await page.getByRole("button", { name: "Save all 2 sessions" }).click();
    await expect(page.getByText(/“eighty” is not a number/).first()).toBeVisible();
    await expect(page.getByLabel("Ari: Wrist hinge, swing 1", { exact: true })).toHaveValue("88");
    await expect(page.getByLabel("Eli: Wrist hinge, swing 1", { exact: true })).toHaveValue("eighty");
    await context.close();
  });
