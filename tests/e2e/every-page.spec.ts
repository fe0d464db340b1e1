import { wordsFor } from "@/lib/words/catalogue";
import { academyNames, builtPages } from "./routes";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

// What holds of every page that was built, whatever it shows. No test changes anything, so they share the workers.

test.describe.configure({ mode: "parallel" });

test("every page loads without an error, a violation or a request to the outside, and is accessible", async ({
  page,
}) => {
  test.setTimeout(20_000 + builtPages().length * 15_000);
  for (const path of builtPages()) {
    await page.goto(path, { waitUntil: "networkidle" });
    await expect(page.getByRole("heading", { level: 1 }), path).toHaveCount(1);
    await expectAccessible(page);
  }
});

test("every page is whole without scripts", async ({ browser }) => {
  test.setTimeout(20_000 + builtPages().length * 10_000);
  const context = await browser.newContext({ javaScriptEnabled: false, baseURL: served.address });
  const page = await context.newPage();
  for (const path of builtPages()) {
    const answer = await page.goto(path);
    expect(`${path} ${answer?.status()}`).toBe(`${path} 200`);
    await expect(page.getByRole("main"), path).toHaveCount(1);
    await expect(page.getByRole("heading", { level: 1 }), path).not.toBeEmpty();
  }
  await context.close();
});

test("every heading, button, label and way on is a message of the catalogue", async ({ page, context }) => {
  test.setTimeout(20_000 + builtPages().length * 10_000);
  await context.addCookies([{ name: "proofband-locale", value: "en-XA", url: served.address }]);
  const unspoken: string[] = [];
  const names = academyNames();
  for (const path of builtPages()) {
    await page.goto(path);
    await expect(page.locator("html")).toHaveAttribute("lang", "en-XA");
    const texts = await page.locator("h1, h2, button, label, legend, caption, nav a").allTextContents();
    unspoken.push(
      ...texts
        .filter((text) => /[A-Za-z]{3}/.test(text) && !text.includes("⟦") && !names.has(text.trim()))
        .map((text) => `${path}: ${text}`),
    );
  }
  expect(unspoken).toEqual([]);
});

test("what isn't there says so, with scripts and without, and looks the same for a student who isn't there", async ({
  page,
  browser,
  watch,
}) => {
  watch.provoked.push(/status of 404/);
  const heading = wordsFor("en").say("absent.title");
  const context = await browser.newContext({ javaScriptEnabled: false, baseURL: served.address });
  const plain = await context.newPage();
  const student = builtPages().find((path) => /^\/students\/(?!new$)[^/]+$/.test(path));
  const absent = [
    "/students/nobody",
    `${student}/nothing`,
    "/import/nothing",
    "/import/past/nothing",
    "/students/%E0%A4%A/x",
  ];
  for (const path of ["/no/such/page", ...absent]) {
    for (const each of [page, plain]) {
      const answer = await each.goto(path);
      expect(`${path} ${answer?.status()}`).toBe(`${path} 404`);
      await expect(each.getByRole("heading", { level: 1 })).toHaveText(heading);
    }
  }
  await page.goto("/no/such/page");
  await expectAccessible(page);
  await context.close();
});

test("the first address leads to the roster", async ({ page }) => {
  await page.goto("/");
  await expect(page).toHaveURL(`${served.address}/students`);
});
