import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import { wordsFor } from "@/lib/words/catalogue";
import { builtPages } from "./routes";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

const words = wordsFor("en");
const season = builtPages().find((path) => /^\/students\/(?!new$)[^/]+$/.test(path)) ?? "";
const WIDTHS = [320, 390, 768, 1440];
const PAPERS = ["A4", "Letter"] as const;
const MARGIN = { top: "14mm", bottom: "14mm", left: "12mm", right: "12mm" };

test("the way out leads from the season to one archive, under a plain name, that the import page knows again", async ({
  page,
}) => {
  await page.goto(season);
  await page.getByRole("link", { name: words.say("take-out.open") }).click();
  await expectAccessible(page);
  await expect(page).toHaveTitle(words.say("take-out.document"));
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("link", { name: words.say("take-out.all.link") }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^proofband-[a-z0-9-]+\.zip$/);
  const file = await download.path();
  const entries = unzipSync(new Uint8Array(readFileSync(file)));
  expect(Object.keys(entries)).toEqual(expect.arrayContaining(["README.txt", "archive.json", "readings.csv"]));
  expect(strFromU8(entries["README.txt"] ?? new Uint8Array())).toContain(words.say("archive.readme.keep"));
  await page.goto("/import");
  await page.locator("#import-file").setInputFiles(file);
  await page.getByRole("button", { name: words.say("import-page.read") }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(words.say("archive-import.stopped"));
  await expect(page.getByRole("main")).toContainText("is on file here already");
  await expectAccessible(page);
  await page.getByRole("button", { name: words.say("import-page.drop") }).click();
  await expect(page).toHaveURL(`${served.address}/import`);
});

test("the pages of taking out fit every width", async ({ page }) => {
  for (const path of [`${season}/take-out`, `${season}/report`])
    for (const width of WIDTHS) {
      await page.setViewportSize({ width, height: 900 });
      await page.goto(path);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(over, `${path} ${width}`).toBeLessThanOrEqual(0);
    }
});

test("every table of the season goes out as the cells that the page shows", async ({ page }) => {
  await page.goto(season);
  const links = page.getByRole("link", { name: words.say("table.download") });
  expect(await links.count()).toBeGreaterThan(1);
  const shown = page.locator("table", { hasText: words.say("season.sessions.caption") });
  const first = (await shown.locator("tbody tr").first().locator("th, td").allTextContents())[0] ?? "";
  const answer = await page.request.get((await links.last().getAttribute("href")) ?? "");
  expect(answer.headers()["content-disposition"]).toMatch(/^attachment; filename="[a-z0-9.-]+\.csv"$/);
  expect(await answer.text()).toContain(first);
});

test("a chart goes out as SVG that a browser reads, and as PNG of twice its size; without scripts no button", async ({
  page,
  browser,
}) => {
  await page.goto(season);
  await page.locator("main ol h3 a").first().click();
  await page.waitForURL(/club=/);
  const link = page.getByRole("link", { name: words.say("chart-file.svg"), exact: true });
  const answer = await page.request.get((await link.getAttribute("href")) ?? "");
  expect(answer.headers()["content-type"]).toContain("image/svg+xml");
  const svg = await answer.text();
  const read = await page.evaluate((text) => {
    const root = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
    return {
      name: root.nodeName,
      errors: root.getElementsByTagName("parsererror").length,
      width: Number(root.getAttribute("width")),
      title: root.getElementsByTagName("title")[0]?.textContent ?? "",
    };
  }, svg);
  expect(read).toMatchObject({ name: "svg", errors: 0 });
  expect(read.title).not.toBe("");
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: words.say("chart-file.png") }).click(),
  ]);
  const png = readFileSync(await download.path());
  expect(png.subarray(1, 4).toString()).toBe("PNG");
  expect(png.readUInt32BE(16)).toBe(read.width * 2);
  const context = await browser.newContext({ javaScriptEnabled: false, baseURL: served.address });
  const plain = await context.newPage();
  await plain.goto(page.url());
  await expect(plain.getByRole("link", { name: words.say("chart-file.svg"), exact: true })).toHaveCount(1);
  await expect(plain.getByRole("button", { name: words.say("chart-file.png") })).toHaveCount(0);
  await context.close();
});

test("the report prints on A4 and letter in one colour: no chart is cut, no sheet is empty, and no name is its title", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await page.goto(`${season}/report`);
  await expectAccessible(page);
  await expect(page).toHaveTitle(words.say("report.document"));
  await page.emulateMedia({ media: "print" });
  await page.setViewportSize({ width: 703, height: 1017 });
  // What must not be cut has to fit on the lower sheet of the two, that of letter: 279 mm less its margins.
  const tallest = await page
    .locator("main section section")
    .evaluateAll((parts) => Math.max(...parts.map((part) => part.getBoundingClientRect().height)));
  expect(tallest).toBeLessThan(((279 - 28) / 25.4) * 96);
  const colours = await page
    .locator("main svg *")
    .evaluateAll((marks) => [...new Set(marks.map((mark) => getComputedStyle(mark).fill))]);
  for (const colour of colours) expect(colour).toMatch(/^(none|url\(.*\)|rgba?\((\d+), \2, \2[,)].*)$/);
  const content = await page.locator("main").evaluate((main) => main.getBoundingClientRect().height);
  for (const format of PAPERS) {
    const paper = (await page.pdf({ format, margin: MARGIN })).toString("latin1");
    const sheets = (paper.match(/\/Type\s*\/Page\b(?!s)/g) ?? []).length;
    // Blocks that are kept whole leave less than half of a sheet free.
    expect(sheets, format).toBeLessThanOrEqual(Math.ceil((content / 900) * 2));
    expect(sheets, format).toBeGreaterThan(0);
  }
});
