import { addStudent } from "./add-student";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

const WIDTHS = [320, 390, 768, 1440];

test("a drill is prescribed in two presses from the season’s page, filled in as it is usually given", async ({
  page,
}) => {
  await page.goto("/students/s14");
  let presses = 0;
  const press = async (role: "link" | "button", name: RegExp | string) => {
    presses += 1;
    await page.getByRole(role, { name }).first().click();
  };
  await press("link", /^Prescribe /);
  await expect(page.getByRole("heading", { level: 1 })).toContainText("A drill for");
  await expect(page.getByLabel("Measured again on")).toHaveValue(/^2026-\d\d-\d\d$/);
  await press("button", "Start the drill");
  await expect(page.getByRole("heading", { level: 1 })).toContainText("since 12 Sep");
  expect(presses).toBe(2);
  await expect(page.getByText(/Pain stops every drill/)).toBeVisible();
  await page.getByRole("button", { name: "Undo this drill" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("undone");
});

test("at its day the coach keeps it with a reason, then changes it for another, without scripts", async ({
  browser,
}) => {
  const context = await browser.newContext({ javaScriptEnabled: false, baseURL: served.address });
  const page = await context.newPage();
  const student = await addStudent(page, "Nell");
  await page.goto(`${student}/drills/new?for=hip-sway`);
  await page.getByLabel("First day").fill("2026-08-20");
  await page.getByLabel("Days a week").fill("4");
  await page.getByLabel("Measured again on").fill("2026-09-10");
  await page.getByRole("button", { name: "Start the drill" }).click();
  await expect(page.getByText(/nothing logged of \d+ asked/)).toBeVisible();
  await expect(page.getByText("nothing logged is not the same as not practised")).toBeVisible();
  await page.getByRole("link", { name: "Decide: keep, change or stop" }).click();
  await page.getByLabel("Keep it until the day below").check();
  await page.getByRole("button", { name: "Decide" }).click();
  await expect(page.getByRole("alert")).toContainText("Nothing was decided yet");
  await expect(page.getByLabel("Keep it until the day below")).toBeChecked();
  await page.getByLabel("Why").fill("Half way");
  await page.getByRole("button", { name: "Decide" }).click();
  await expect(page.getByRole("cell", { name: "Half way" })).toBeVisible();
  await page.getByRole("link", { name: "Decide: keep, change or stop" }).click();
  await page.getByLabel(/^Change the drill/).check();
  await page.getByLabel("Why").fill("No effect");
  await page.getByRole("button", { name: "Decide" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("A drill for Nell");
  await page.goto(`${student}/drills`);
  await expect(page.getByRole("cell", { name: "stopped: No effect" })).toBeVisible();
  await context.close();
});

test("in a pause the form says stop first, and gives a drill only on the coach’s word", async ({ page }) => {
  const student = await addStudent(page, "Otis");
  await page.goto(`${student}/events/new?kind=injury`);
  await page.getByLabel("wrist", { exact: true }).check();
  await page.getByRole("button", { name: "Record the event" }).click();
  await page.waitForURL((url) => !url.pathname.endsWith("/new"));
  await page.goto(`${student}/drills/new?for=hinge`);
  await expect(page.getByText(/A pause is in force/)).toBeVisible();
  await page.getByRole("button", { name: "Start the drill" }).click();
  await expect(page.getByRole("alert").first()).toContainText("stop first");
  await page.getByLabel(/I give the drill on my word/).check();
  await page.getByRole("button", { name: "Start the drill" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("since 12 Sep");
});

test("the dose of another drill is filled in on request", async ({ page }) => {
  const student = await addStudent(page, "Pippin");
  await page.goto(`${student}/drills/new?for=foot-line`);
  await page.getByLabel("Which").selectOption({ label: "Crease to the ear (Trail-hand V)" });
  await page.getByRole("button", { name: "Fill in the dose of this drill" }).click();
  await expect(page.getByLabel("Repeats a day")).toHaveValue("20");
  await expect(page.getByText("Filled in as this drill is usually given.")).toBeVisible();
});

test("the pages of a drill hold at 320 to 1440 px and can be read by everyone", async ({ page }) => {
  for (const address of ["drills/s02-a1", "drills/s02-a1/decide", "drills/new?for=hinge"]) {
    await page.goto(`/students/s02/${address}`);
    await expectAccessible(page);
    for (const width of WIDTHS) {
      await page.setViewportSize({ width, height: 900 });
      const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect([address, width, over <= 0]).toEqual([address, width, true]);
    }
  }
});

test("what is left without a drill on purpose is marked with one press, and ended with another", async ({ page }) => {
  await page.goto("/students/s03/drills");
  const begin = page.getByRole("button", { name: /^Leave .* alone on purpose$/ }).first();
  const name = /^Leave (.*) alone on purpose$/.exec((await begin.textContent()) ?? "")?.[1] ?? "";
  await begin.click();
  await expect(page.getByRole("heading", { name: "One thing waits on purpose" })).toBeVisible();
  await page.getByRole("button", { name: `End the wait of ${name}` }).click();
  await expect(page.getByRole("heading", { name: "Nothing waits on purpose" })).toBeVisible();
});
