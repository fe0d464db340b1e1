import { addStudent } from "./add-student";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

const WIDTHS = [320, 390, 768, 1440];
/** A margin as browsers print with by default. */
const MARGIN = { top: "12mm", bottom: "12mm", left: "12mm", right: "12mm" };

test("plan, review and due list hold at 320 to 1440 px and can be read by everyone", async ({ page }) => {
  for (const address of ["/students/s01/plan", "/students/s01/review", "/due"]) {
    await page.goto(address);
    await expectAccessible(page);
    for (const width of WIDTHS) {
      await page.setViewportSize({ width, height: 900 });
      const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(`${address} ${width} ${over <= 0}`).toBe(`${address} ${width} true`);
    }
  }
});

test("a plan is worked out anew, kept as told, copied, and taken back", async ({ page, context }) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  const student = await addStudent(page, "Plan of Pip");
  await page.goto(`${student}/plan`);
  for (const name of ["Trail-hand V", "Lead-hand V", "Foot line"]) await page.getByRole("checkbox", { name }).uncheck();
  await page.getByRole("checkbox", { name: "Wrist hinge" }).check();
  await page.getByLabel("Swings of the film").fill("4");
  await page.getByRole("button", { name: "Work it out anew" }).click();
  await expect(page.getByRole("heading", { name: /^One fundamental, about/ })).toBeVisible();
  await page.getByRole("button", { name: "Keep as told" }).click();
  await expect(page.getByText("Kept as told.")).toBeVisible();
  await expect(page.getByText(/^Told on .* No film has come since\.$/)).toBeVisible();
  const message = page.getByLabel(/^Message for the family, \d+ letters$/);
  await page.getByRole("button", { name: "Copy" }).click();
  await expect(page.getByText("Copied.")).toBeVisible();
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  expect(copied).toBe(await message.inputValue());
  expect(copied.length).toBeLessThanOrEqual(600);
  await page.getByRole("button", { name: /^Take back/ }).click();
  await expect(page.getByRole("cell", { name: /^taken back/ })).toBeVisible();
});

test("without scripts a plan is worked out, kept and its text stands there to be selected", async ({ browser }) => {
  const context = await browser.newContext({
    javaScriptEnabled: false,
    baseURL: served.address,
    storageState: served.signedIn,
  });
  const page = await context.newPage();
  await page.goto("/students/s02/plan");
  await page.getByLabel("Swings of the film").fill("3");
  await page.getByRole("button", { name: "Work it out anew" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("3 swings");
  await page.getByRole("button", { name: "Keep as told" }).click();
  await expect(page.getByText("Kept as told.")).toBeVisible();
  await expect(page.getByLabel(/^Message for the family/)).toHaveValue(/^Bea: the next video, please/);
  await expect(page.getByRole("button", { name: "Copy" })).toHaveCount(0);
  await context.close();
});

test("on paper a plan is one sheet, and Ari's review two at most with the numbers of the season's page", async ({
  page,
}) => {
  const pages = (paper: Buffer) => paper.toString("latin1").match(/\/Type\s*\/Page[^s]/g)?.length;
  for (const format of ["A4", "Letter"] as const) {
    await page.goto("/students/s01/plan");
    expect(pages(await page.pdf({ format, margin: MARGIN }))).toBe(1);
    await page.goto("/students/s01/review");
    expect(pages(await page.pdf({ format, margin: MARGIN }))).toBeLessThanOrEqual(2);
  }
  const paper = ((await page.locator("main").textContent()) ?? "").replaceAll("\u00a0", " ");
  await page.goto("/students/s01");
  const headings = await page.getByRole("heading", { level: 3, name: /^Real gain: .*→/ }).allTextContents();
  const proved = headings.map((heading) => heading.replaceAll("\u00a0", " ").replace(/^.*(?=Real gain:)/, ""));
  expect(proved.length).toBeGreaterThan(0);
  for (const change of proved) expect(paper).toContain(change);
});
