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

test("what is recorded, and each film, opens just those students too", async ({ page }) => {
  for (const [name, cell] of [
    ["Students who were filmed, and their films", "filmed-unrecorded"],
    ["What came of the films", "film-counted"],
    ["Tracks not settled, by why", "open-no-plan"],
  ] as const) {
    await page.goto("/academy");
    const link = page.getByRole("table", { name }).locator(`a[href*="counted=${cell}"]`).first();
    const count = Number(await link.textContent());
    await link.click();
    await page.waitForURL(new RegExp(`counted=${cell}`));
    const shown = await page
      .getByText(/^\d+ of \d+ students/)
      .first()
      .textContent();
    const students = Number(/^\d+/.exec(shown ?? "")?.[0]);
    expect(students).toBeGreaterThan(0);
    // Of one student there may be several films and tracks, and one of what is recorded.
    if (cell === "filmed-unrecorded") expect(students).toBe(count);
    else expect(students).toBeLessThanOrEqual(count);
    await expect(page.getByText("Counted for").first()).toBeVisible();
  }
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
