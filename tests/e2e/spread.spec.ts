import { readFileSync } from "node:fs";
import path from "node:path";
import { openDatabase } from "@/db/client";
import { POLICY } from "@/lib/verdict/policy";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

test.describe.configure({ mode: "parallel" });

/** How many kept verdicts of whoever is here lie at a place, counted in the file itself. */
function keptAt(fundamental: string, place: string): number {
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"), "read");
  try {
    const count = db.sqlite
      .prepare<[string, string, string], number>(
        `SELECT count(*) FROM analysis JOIN student ON student.id = analysis.student_id
         WHERE fundamental_id = ? AND json_extract(summary, '$.verdict.position') = ? AND policy_version = ?
           AND data_revision = student.revision AND departed_on IS NULL`,
      )
      .pluck()
      .get(fundamental, place, POLICY.version);
    return count ?? -1;
  } finally {
    db.close();
  }
}

/** The first number of a text. */
const numberOf = (text: string | null): number => Number(/\d+/.exec(text ?? "")?.[0]);

test("holds at 320 to 1440 px, and everyone can read it", async ({ page }) => {
  test.setTimeout(120_000);
  for (const width of [320, 390, 768, 1440]) {
    await page.setViewportSize({ width, height: 900 });
    await page.goto("/academy/hinge");
    await expect(page.getByRole("heading", { level: 1 })).toContainText(/^Wrist hinge: \d+ of \d+ inside/);
    await expect(page.getByRole("img", { name: /levels of Wrist hinge/ }).first()).toBeVisible();
    await page.getByText("The same dots as a table").click();
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(width);
    await expectAccessible(page);
  }
});

test("a row of the academy's page leads to it, and a number of it to just those students", async ({ page }) => {
  await page.goto("/academy");
  const levels = page.getByRole("table", { name: "Latest levels by fundamental, counted by track" });
  const row = levels.getByRole("row", { name: /^Wrist hinge/ });
  const counts = (await row.getByRole("cell").allTextContents()).map(Number);
  await row.getByRole("link", { name: "Wrist hinge" }).click();
  await page.waitForURL("**/academy/hinge");
  const where = page.getByRole("table", { name: "Where the levels lie" });
  const shown = (await where.getByRole("cell").allTextContents()).map(Number);
  expect(shown).toEqual([counts[2], counts[1], counts[0]]);
  expect(shown).toEqual(["outside", "edge", "inside"].map((place) => keptAt("hinge", place)));
  const drawn = page.getByRole("img", { name: /levels of Wrist hinge/ }).first();
  expect(numberOf(await drawn.getAttribute("aria-label"))).toBe(shown.reduce((sum, each) => sum + each, 0));
  const outside = where.getByRole("row", { name: /^Outside/ }).getByRole("link");
  const most = Number(await outside.textContent());
  await outside.click();
  await page.waitForURL(/fundamental=hinge/);
  expect(new URL(page.url()).searchParams.get("place")).toBe("outside");
  const students = numberOf(
    await page
      .getByText(/^\d+ of \d+ students/)
      .first()
      .textContent(),
  );
  expect(students).toBeGreaterThan(0);
  expect(students).toBeLessThanOrEqual(most);
});

test("the drawing and each table go out as files with the very numbers of the page", async ({ page, request }) => {
  await page.goto("/academy/hinge");
  const svg = await page.getByRole("link", { name: /SVG/ }).first().getAttribute("href");
  const drawing = await request.get(svg ?? "");
  expect(drawing.headers()["content-type"]).toContain("image/svg+xml");
  const sentence =
    (await page
      .getByText(/levels of Wrist hinge/)
      .first()
      .textContent()) ?? "none";
  expect(await drawing.text()).toContain(sentence);
  const table = page.getByRole("region", { name: "Where the levels lie" });
  const cells = await table.getByRole("cell").allTextContents();
  const download = page.waitForEvent("download");
  await table.locator("xpath=following-sibling::p[1]").getByRole("link").click();
  const csv = readFileSync(await (await download).path(), "utf8");
  expect(
    csv
      .trimEnd()
      .split("\r\n")
      .slice(1)
      .map((line) => line.split(",").at(-1)),
  ).toEqual(cells);
  expect((await request.get("/api/academy/nothing/svg")).status()).toBe(404);
});

test("a drill's comparison leads here, and what helped leads to it", async ({ page }) => {
  await page.goto("/drills");
  await page.getByRole("link", { name: /across the academy$/ }).click();
  await page.waitForURL(/\/academy\/[a-z-]+$/);
  await page.getByRole("link", { name: "The whole comparison" }).click();
  await page.waitForURL(/\/drills\?for=/);
});

test("a fundamental that there isn't is not found", async ({ page, watch }) => {
  watch.provoked.push(/404/);
  expect((await page.goto("/academy/nothing"))?.status()).toBe(404);
});

test.describe("without scripts", () => {
  test.use({ javaScriptEnabled: false });

  test("a group is chosen by a plain form; then no second cut is shown", async ({ page }) => {
    await page.goto("/academy/hinge");
    const offered = await page
      .getByLabel("Of whom")
      .locator("option")
      .evaluateAll((all) => all.map((each) => (each as HTMLOptionElement).value));
    expect(offered.length).toBeGreaterThan(1);
    await page.getByLabel("Of whom").selectOption(offered[1] ?? "");
    await page.getByRole("button", { name: "Show" }).click();
    await page.waitForURL(/\/academy\/hinge\?of=/);
    expect(
      numberOf(await page.getByText(/^\d+ students of whom it is measured: /).textContent()),
    ).toBeGreaterThanOrEqual(5);
    await expect(page.getByRole("table", { name: "Levels by clubs and by age" })).toHaveCount(0);
    await page.goto("/academy/hinge?of=coach-lark");
    await expect(page.getByText(/^\d+ students of whom it is measured$/)).toBeVisible();
  });
});
