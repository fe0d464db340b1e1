import { addDemoFamily, demoFamilyCookie, demoPageId } from "./demo-family";
import { openDetails } from "./open-details";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

// What the page behind a family's link shows of a season: without scripts first, for that is how it must be whole.

const WIDTHS = [320, 390, 768, 1440];

test.use({ storageState: { cookies: [], origins: [] }, viewport: { width: 390, height: 844 } });
test.beforeAll(() => addDemoFamily());
test.beforeEach(async ({ context }) => {
  const [name = "", value = ""] = demoFamilyCookie("live").split("=");
  await context.addCookies([
    { name, value, url: served.address },
    { name: "proofband-academy", value: "demo", url: served.address },
  ]);
});

const PAGE = `/family/${demoPageId("live")}`;

test.describe("without scripts", () => {
  test.use({ javaScriptEnabled: false });

  test("the finding, the sentences, the picture and the task stand in the first answer, in this order", async ({
    page,
  }) => {
    const answer = await page.goto(PAGE);
    expect(answer?.status()).toBe(200);
    const html = (await answer?.text()) ?? "";
    const main = page.getByRole("main");
    const heading = page.getByRole("heading", { level: 1 });
    await expect(heading).toContainText("Ari");
    const picture = main.getByRole("img").first();
    await expect(picture).toBeVisible();
    const places = [
      await heading.textContent(),
      "What is good",
      "The sandy strip is where we want",
      "Next video",
      "What else we look at",
      "Show the numbers",
    ].map((text) => html.replace(/&#x27;/g, "’").indexOf(text ?? ""));
    expect(places.every((place) => place > 0)).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  test("degrees stand behind “Show the numbers” alone, which opens without a script", async ({ page }) => {
    await page.goto(PAGE);
    const main = page.getByRole("main");
    const outside = await main.evaluate((node) => {
      const copy = node.cloneNode(true) as Element;
      for (const shut of copy.querySelectorAll("details")) shut.remove();
      return copy.textContent ?? "";
    });
    expect(outside).not.toMatch(/°|±/);
    await expect(main.getByText("How sure").first()).toBeHidden();
    await page.getByText("Show the numbers").click();
    await expect(main.getByText("How sure").first()).toBeVisible();
    await expect(main.getByText(/±/).first()).toBeVisible();
  });

  test("a season's picture is as wide as the phone allows and at least 250 px high; all else has one word each", async ({
    page,
  }) => {
    await page.goto(PAGE);
    const main = page.getByRole("main");
    const box = await main.getByRole("img").first().boundingBox();
    expect(box?.width).toBeGreaterThan(320);
    expect(box?.height).toBeGreaterThan(250);
    const strips = main.locator("section", { hasText: "What else we look at" }).getByRole("listitem");
    expect(await strips.count()).toBeGreaterThan(3);
    for (const strip of await strips.filter({ has: page.getByRole("img") }).all())
      await expect(strip.locator("strong")).not.toBeEmpty();
  });

  test("after filming each thing is ticked with a thumb, and nothing of it is sent", async ({ page }) => {
    await page.goto(PAGE);
    const checks = page.getByRole("group", { name: /After the video/ }).getByRole("checkbox");
    expect(await checks.count()).toBeGreaterThan(2);
    for (const check of await checks.all()) {
      await check.check();
      expect(await check.evaluate((box: HTMLInputElement) => [box.form, box.name])).toEqual([null, ""]);
      const label = await check.locator("xpath=..").boundingBox();
      expect(label?.height).toBeGreaterThanOrEqual(44);
    }
  });
});

test("with every part open it holds at 320 to 1440 px, is accessible, and prints", async ({ page }) => {
  await page.goto(PAGE);
  await openDetails(page, "Show the numbers", page.getByText("How sure").first());
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 900 });
    await expectAccessible(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
  }
  await page.emulateMedia({ media: "print" });
  await expect(page.getByRole("main").getByRole("img").first()).toBeVisible();
});
