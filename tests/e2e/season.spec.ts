import { addStudent } from "./add-student";
import { served } from "./served";
import { alert, expect, expectAccessible, test } from "./watched";

const WIDTHS = [320, 390, 768, 1440];

test("the season's page says one thing first, at every width and for everyone", async ({ page }) => {
  for (const address of ["/students/s04", "/students/s10", "/students/s02", "/students/s04/priority?club=iron"]) {
    await page.goto(address);
    await expectAccessible(page);
    for (const width of WIDTHS) {
      await page.setViewportSize({ width, height: 900 });
      const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect([address, width, Math.max(0, over)]).toEqual([address, width, 0]);
    }
  }
});

test("a slip comes first, whatever isn't known; the chain has what nobody measured, with the film that would", async ({
  page,
}) => {
  await page.goto("/students/s04");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Dot: Foot line first, it has slipped");
  await expect(page.getByRole("heading", { name: "Foot line: back to what helped" })).toBeVisible();
  await expect(page.getByText(/^The next films show Foot line inside/)).toBeVisible();
  const lead = page.locator("li[data-place]").filter({ hasText: "Lead-hand V" });
  await expect(lead).toContainText("A film, face-on, with the still at setup measures it.");
});

test("on a phone the next thing and what is proved come before the charts, and what isn't in hand is folded", async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto("/students/s04");
  const top = async (name: string | RegExp) => (await page.getByRole("heading", { name }).boundingBox())?.y ?? 0;
  const next = await top("Foot line: back to what helped");
  expect(next).toBeGreaterThan(0);
  expect(next).toBeLessThan(await top(/are inside their band/));
  const kept = page.locator("li[data-place]").filter({ has: page.getByRole("link", { name: "Trail-hand V" }) });
  const chart = kept.locator("svg[role=img]:not(summary svg)");
  await expect(kept.locator("summary svg[role=img]:visible")).toHaveCount(1);
  await expect(chart.filter({ visible: true })).toHaveCount(0);
  await expect(async () => {
    if ((await chart.filter({ visible: true }).count()) === 0) await kept.locator("summary").click();
    await expect(chart.filter({ visible: true })).toHaveCount(1, { timeout: 2000 });
  }).toPass({ timeout: 30_000 });
  await expectAccessible(page);
  const inHand = page.locator("li[data-place=in-hand]");
  await expect(inHand.locator("svg[role=img]:visible")).toHaveCount(1);
});

test("the page of one fundamental says the next act of the same order of work, and leads to its reason", async ({
  page,
}) => {
  await page.goto("/students/s04");
  const chain = page.getByRole("region", { name: "The evidence" });
  await chain.getByRole("link", { name: "Foot line", exact: true }).click();
  await page.waitForURL(/\/foot-line\?/);
  const next = page.getByRole("region", { name: "Do next" });
  await expect(next.getByRole("heading")).toHaveText(/^(Give a drill for it|Go on with )/);
  await next.getByRole("link", { name: "Why, in Dot’s order of work" }).click();
  await expect(page.getByRole("heading", { name: "Foot line: back to what helped" })).toBeVisible();
  await page.getByRole("region", { name: "The evidence" }).getByRole("link", { name: "Hip sway, top" }).click();
  await page.waitForURL(/\/hip-sway\?/);
  await expect(page.getByRole("region", { name: "Do next" }).getByRole("heading")).toHaveText(
    /^(Nothing|Keep it|Read it|It rests)/,
  );
  await expectAccessible(page);
});

test("on a phone the longest season of the demo is at most 4,500 px high, and the chain begins on the second screen", async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto("/students/s10");
  expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThanOrEqual(4500);
  const evidence = await page.getByRole("region", { name: "The evidence" }).boundingBox();
  expect(evidence?.y ?? Number.POSITIVE_INFINITY).toBeLessThan(2 * 844);
});

test("wide, on paper and opened on a phone, nothing of the season is folded away; without scripts too", async ({
  browser,
}) => {
  const context = await browser.newContext({ javaScriptEnabled: false, baseURL: served.address });
  const page = await context.newPage();
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.goto("/students/s04");
  const held = [
    page.getByRole("table", { name: "Sessions, latest first" }),
    page.getByRole("table", { name: "Open questions" }),
    page.getByRole("table", { name: "Drills of the season" }),
    page.getByText("Pain, or a pause: everything stops."),
    page.getByText(/^Owned here means: /),
    page.getByText("A film, face-on, with the still at setup measures it.").first(),
  ];
  const seen = async (state: string, visible: boolean) => {
    for (const [at, part] of held.entries()) expect([state, at, await part.isVisible()]).toEqual([state, at, visible]);
  };
  await seen("wide", true);
  await page.setViewportSize({ width: 390, height: 844 });
  await seen("phone", false);
  await page.emulateMedia({ media: "print" });
  await seen("paper", true);
  await page.emulateMedia({ media: "screen" });
  // From the first to the last, outer before inner: a shut one hides no other.
  for (const summary of await page.locator("main summary:visible").all()) await summary.click();
  await seen("phone, opened", true);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
  await context.close();
});

test("one up and one down over the same days is said aloud, without a cause", async ({ page }) => {
  await page.goto("/students/s10");
  await expect(page.getByRole("heading", { name: "Some up, some down over the same days" })).toBeVisible();
  await expect(
    page.getByText(/Hip sway, top moved toward its band: .*Tilt kept moved away from its band/),
  ).toBeVisible();
  await expect(page.getByText(/Whether one made the other no film can say/)).toBeVisible();
});

test("the coach overrules with a reason and lets the order of work choose again, without scripts", async ({
  browser,
}) => {
  const context = await browser.newContext({ javaScriptEnabled: false, baseURL: served.address });
  const page = await context.newPage();
  await page.goto("/students/s04");
  await page.getByRole("link", { name: "Put something else in hand" }).click();
  await page.getByLabel("What is worked on").selectOption({ value: "hip-sway" });
  await page.getByRole("button", { name: "Put it in hand" }).click();
  await expect(alert(page)).toContainText("Nothing was changed yet");
  await expect(page.getByLabel("What is worked on")).toHaveValue("hip-sway");
  await page.getByLabel("Why", { exact: true }).fill("The stick is lost; she can feel the wall.");
  await page.getByRole("button", { name: "Put it in hand" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Dot: Hip sway, top, chosen by the coach");
  await expect(
    page.getByText(/^Put in hand by Coach Wren on .*: “The stick is lost; she can feel the wall\.”$/),
  ).toBeVisible();
  await expect(page.getByText("The order of work would say Foot line: it has slipped.")).toBeVisible();
  await page.goto("/students");
  await expect(page.getByText("Chosen by the coach.").first()).toBeAttached();
  await page.goto("/students/s04/priority?club=iron");
  await page.getByLabel("What is worked on").selectOption({ label: "Let the order of work choose" });
  await page.getByLabel("Why", { exact: true }).fill("Found the stick.");
  await page.getByRole("button", { name: "Put it in hand" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Dot: Foot line first, it has slipped");
  await page.goto("/students/s04/priority?club=iron");
  await expect(page.getByRole("table", { name: /^Choices with/ }).getByRole("row")).toHaveCount(3);
  await context.close();
});

test("a new student's page asks for two films on two days; a yes to pain leads to the pause first", async ({
  page,
}) => {
  await page.goto(await addStudent(page, "Quill"));
  await expect(page.getByRole("heading", { name: "Two films on two days, before the first drill" })).toBeVisible();
  await expect(page.getByText("Still missing: the birth year, the usual club, two films on two days.")).toBeVisible();
  await expect(page.getByText("Not measured")).toHaveCount(10);
  await expectAccessible(page);
  await page.goto("/students/new");
  await page.getByLabel("Alias or first name").fill("Reed");
  await page.getByLabel("right-handed").check();
  await page.getByLabel("Yes", { exact: true }).check();
  await page.getByLabel("Given by").fill("mother");
  await page.getByLabel("I hold this consent on paper.").check();
  await page.getByRole("button", { name: "Add the student" }).click();
  await page.waitForURL(/\/events\/new\?.*kind=injury/);
  await page.getByLabel("wrist", { exact: true }).check();
  await page.getByRole("button", { name: "Record the event" }).click();
  await page.waitForURL((url) => !url.pathname.endsWith("/new"));
  await page.goto(page.url().replace(/\/events\/.*/, ""));
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Reed: no work for now");
  await expect(
    page.getByRole("heading", { name: /^Stopped for pain since .*: no drill and no full swings$/ }),
  ).toBeVisible();
});
