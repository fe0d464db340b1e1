import { expect, expectAccessible, test } from "./watched";

test("the comparison of drills holds at 320 to 1440 px, and everyone can read it", async ({ page }) => {
  for (const address of [
    "/drills",
    "/drills?for=trail-v",
    "/drills?for=hinge&club=driver",
    "/drills?for=hinge&of=age-13-15",
  ])
    for (const width of [320, 390, 768, 1440]) {
      await page.setViewportSize({ width, height: 900 });
      await page.goto(address);
      await expect(page.getByRole("heading", { level: 1 })).toContainText(/: (no drill|of this group)/);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect([address, width, over <= 0]).toEqual([address, width, true]);
      await expectAccessible(page);
    }
});

test("it is reached from the academy's page, says what can't be told, and its table goes out as it stands", async ({
  page,
}) => {
  await page.goto("/academy");
  await page.getByRole("link", { name: "Compare the drills" }).click();
  await page.waitForURL(/\/drills$/);
  await expect(page.getByText(/isn’t the same as no drill, so nothing is said to work/)).toBeVisible();
  const table = page.getByRole("table", { name: /^Effect of each drill/ });
  const row = table.getByRole("row").nth(1);
  const drill = (await row.getByRole("rowheader").textContent()) ?? "";
  await expect(row.getByRole("img", { name: new RegExp(`^${drill}: `) })).toBeVisible();
  await row.getByRole("link", { name: drill }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText(`${drill}: `);
  await expect(page.getByRole("img", { name: /moved to the first day on/ }).first()).toBeVisible();
  for (const width of [320, 390, 768, 1440]) {
    await page.setViewportSize({ width, height: 900 });
    const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect([width, over <= 0]).toEqual([width, true]);
    await expectAccessible(page);
  }
  await page.goBack();
  const file = page.waitForEvent("download");
  await page.getByRole("link", { name: "This table as CSV" }).first().click();
  const stream = await (await file).createReadStream();
  const parts: Buffer[] = [];
  for await (const part of stream) parts.push(part as Buffer);
  expect(Buffer.concat(parts).toString("utf8")).toContain(drill);
});

test.describe("without scripts", () => {
  test.use({ javaScriptEnabled: false });

  test("another fundamental is asked for by a link", async ({ page }) => {
    await page.goto("/drills");
    await page.getByRole("link", { name: "Wrist hinge" }).click();
    await expect(page.getByRole("heading", { level: 1 })).toContainText("Wrist hinge");
  });

  test("a group is asked for by a plain form, and its figures keep fundamental, clubs and group", async ({ page }) => {
    await page.goto("/drills?for=hinge");
    const everybody = await page.locator("main").textContent();
    await page.getByLabel("Of whom").selectOption({ label: "Age: 13 to 15" });
    await page.getByRole("button", { name: "Show" }).click();
    await page.waitForURL(/\/drills\?for=hinge.*of=age-13-15/);
    await expect(page.getByText(/students of whom it is measured: Age: 13 to 15/)).toBeVisible();
    const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(over).toBeLessThanOrEqual(0);
    await page.getByRole("link", { name: "everybody", exact: true }).click();
    await page.waitForURL(/\/drills\?for=hinge(?!.*of=)/);
    expect(await page.locator("main").textContent()).toBe(everybody);
  });
});
