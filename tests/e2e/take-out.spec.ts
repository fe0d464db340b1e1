import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import Papa from "papaparse";
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

/** Tables that have no file of their own, by the words they go by, and why. */
const NO_FILE: Readonly<Record<string, string>> = {
  "/record": "fields to type into",
  "/sessions/new": "fields to type into",
  "/correct": "fields to type into, with what is on file beside them",
  "/practice form": "fields to type into",
  "/sessions/sheet": "an empty sheet to be filled by hand",
  "/account": "one's own browsers, to be looked at and signed out",
  "/people": "who works here; no evidence, and people's addresses are for the page alone",
  "/erase": "how much goes; the record itself goes out as the archive that the page links",
  "/handing-over": "who had the student stands in the student's archive, where they stand in the season's files",
  "/import/": "rows of an upload that nobody has confirmed",
};

test("every table of every page has a file of its cells, or stands in the list with the reason", async ({ page }) => {
  const pages = builtPages();
  test.setTimeout(20_000 + pages.length * 10_000);
  const bare: string[] = [];
  const files = new Set<string>();
  for (const path of pages) {
    await page.goto(path);
    const tables = await page.locator("main table").evaluateAll((all) =>
      all.map((table) => {
        const named = table.querySelector("caption")?.id ?? "none";
        // Its own download is named after its caption; a download of the part stands in the part.
        const own = document.querySelector<HTMLAnchorElement>(`a[aria-describedby="${named}"]`);
        const part =
          (table.closest("main > section, main > div > section") ?? table.closest("section"))?.querySelectorAll("a") ??
          [];
        const href = [own, ...part]
          .map((link) => link?.getAttribute("href") ?? "")
          .find((to) => /^\/api\/(tables\?|.*csv)/.test(to));
        const typed = table.querySelector("input, select, textarea") === null ? "" : " form";
        return { href, words: (table.textContent ?? "").slice(0, 60), typed };
      }),
    );
    for (const { href, words: text, typed } of tables) {
      if (href !== undefined) files.add(href);
      else if (!Object.keys(NO_FILE).some((part) => `${path}${typed}`.includes(part))) bare.push(`${path}: ${text}`);
    }
  }
  expect(bare).toEqual([]);
  expect(files.size).toBeGreaterThan(20);
  for (const href of files) {
    const answer = await page.request.get(href);
    expect(`${href} ${answer.status()}`).toBe(`${href} 200`);
    // Nothing in a cell may begin a formula, whatever was typed.
    const cells = Papa.parse<string[]>((await answer.text()).replace(/^\uFEFF/, "")).data.flat();
    expect(
      cells.filter((cell) => /^[=+\-@\t\r]/.test(cell) && !/^[+-]?\d+([.,]\d+)?$/.test(cell)),
      href,
    ).toEqual([]);
  }
});

test("the season, solid strikes and re-readings go out as drawings under plain names, and as pictures", async ({
  page,
}) => {
  await page.goto(season);
  const alias = ((await page.locator("h1").textContent()) ?? "").split(/[^\p{L}]/u)[0] ?? "";
  for (const name of ["season", "contact"]) {
    const href = (await page.locator(`main a[href*="/${name}/svg?"]`).first().getAttribute("href")) ?? "";
    const answer = await page.request.get(href);
    expect(answer.headers()["content-disposition"]).toBe(`attachment; filename="${name}.svg"`);
    const svg = await answer.text();
    expect(svg).not.toContain(alias);
    const part = page.locator("p", { has: page.locator(`a[href*="/${name}/svg?"]`) }).first();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      part.getByRole("button", { name: words.say("chart-file.png") }).click(),
    ]);
    expect(download.suggestedFilename()).toBe(`${name}.png`);
    const png = readFileSync(await download.path());
    expect(png.readUInt32BE(16)).toBe(2 * Number(/ width="(\d+)"/.exec(svg)?.[1]));
  }
  await page.goto("/rereads/of/hinge");
  const href = (await page.locator('main a[href*="/svg?level="]').first().getAttribute("href")) ?? "";
  const answer = await page.request.get(href);
  expect(answer.headers()["content-disposition"]).toBe('attachment; filename="rereads-hinge.svg"');
  expect(await answer.text()).toContain("<circle");
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
    // A summary, then two fundamentals a sheet: seven of them are five sheets.
    expect(sheets, format).toBeLessThanOrEqual(5);
    expect(sheets, format).toBeGreaterThan(0);
  }
});
