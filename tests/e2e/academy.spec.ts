import { expect, expectAccessible, test } from "./watched";

test("the academy's page holds at 320 to 1440 px, and everyone can read it", async ({ page }) => {
  test.setTimeout(120_000);
  for (const width of [320, 390, 768, 1440]) {
    await page.setViewportSize({ width, height: 900 });
    await page.goto("/academy");
    await expect(page.getByRole("heading", { level: 1 })).toContainText("proved");
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(width);
    await expectAccessible(page);
  }
});

test("a count of the table opens just its students on the roster", async ({ page }) => {
  await page.goto("/academy");
  const table = page.getByRole("table", { name: "Proved changes by month" });
  const count = table.getByRole("cell").getByRole("link").first();
  const changes = Number(await count.textContent());
  await count.click();
  await page.waitForURL(/since=(gain|slip)-\d{4}-\d{2}/);
  const shown = await page
    .getByText(/^\d+ of \d+ students/)
    .first()
    .textContent();
  const students = Number(/^\d+/.exec(shown ?? "")?.[0]);
  expect(students).toBeGreaterThan(0);
  expect(students).toBeLessThanOrEqual(changes);
});

test.describe("without scripts", () => {
  test.use({ javaScriptEnabled: false });

  test("a group is chosen by a plain form, and no group of fewer than five is offered", async ({ page }) => {
    await page.goto("/academy");
    const groups = page.getByLabel("Of whom");
    const offered = await groups
      .locator("option")
      .evaluateAll((all) => all.map((each) => (each as HTMLOptionElement).value));
    // One student is with another coach, so neither coach is offered.
    expect(offered.filter((value) => value.startsWith("coach-"))).toEqual([]);
    expect(offered.length).toBeGreaterThan(1);
    for (const value of offered.slice(1)) {
      await page.goto(`/academy?of=${value}`);
      const state = await page.getByText(/^\d+ students: /).textContent();
      expect(Number(/^\d+/.exec(state ?? "")?.[0]), value).toBeGreaterThanOrEqual(5);
    }
    await groups.selectOption(offered[1] ?? "");
    await page.getByRole("button", { name: "Show" }).click();
    await page.waitForURL(/\/academy\?of=/);
    await page.goto("/academy?of=coach-lark");
    await expect(page.getByText(/^\d+ students, everybody who is here$/)).toBeVisible();
  });
});
