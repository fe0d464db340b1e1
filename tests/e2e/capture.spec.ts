import { expect, expectAccessible, test } from "./watched";

test("the capture panel: without scripts a button answers, with what was chosen kept; it is accessible", async ({
  browser,
}) => {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto("/students/s05/sessions/new");
  await expect(page.getByText(/Nobody looked: a phone like that is off by 8°/)).toBeVisible();
  await page.getByLabel("Square").first().selectOption("square");
  await page.getByRole("button", { name: "Show what this film can show" }).first().click();
  await expect(page.getByText("Checked: the phone stood where it should.")).toBeVisible();
  await expect(page.getByLabel("Square").first()).toHaveValue("square");
  await page.getByText("Each fundamental of the film face-on").click();
  await expect(page.getByRole("row", { name: /Side tilt, setup/ }).first()).toContainText("counts");
  await context.close();
});

test("the capture panel answers a left-hander's stick with a left-hander's side, and holds no earlier value", async ({
  page,
}) => {
  await page.goto("/students/s05/sessions/new");
  await page.getByText("What you saw").first().click();
  await page.getByLabel("Stick from the ball at the phone: lean, degrees").fill("30");
  await page.getByLabel("Its near end lies to the").first().selectOption("right");
  await page.getByLabel("Phone to student, cm").first().fill("300");
  await page.getByLabel("Lens above the ground, cm").first().fill("100");
  // Eli is left-handed: his near end to the right is the phone too far toward the target, on the picture's left.
  await expect(page.getByText(/too far to the left, as you stand behind it/)).toBeVisible();
  await expect(page.getByText(/can’t be used: the phone stood too far round/).first()).toBeVisible();
  await expect(page.getByText(/put the phone \d+ cm farther to the right/)).toBeVisible();
  await expectAccessible(page);
});
