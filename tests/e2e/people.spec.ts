import type { Browser, Page } from "playwright/test";
import { addStudent } from "./add-student";
import { servedForPeople as served } from "./served";
import { expect, expectAccessible, test } from "./watched";

const OWN = {
  cookies: [
    {
      ...{ name: "proofband-academy", value: "own", domain: "127.0.0.1", path: "/", expires: -1 },
      ...{ httpOnly: true, secure: false, sameSite: "Lax" as const },
    },
  ],
  origins: [],
};
const OWNER = { email: "lark@range.example", password: "a bucket of range balls" };
const FRESH = "six geese over the pond";

test.use({ storageState: OWN, baseURL: served.address, viewport: { width: 390, height: 844 } });

async function signIn(page: Page, { email, password }: typeof OWNER): Promise<void> {
  await page.goto("/sign-in");
  await page.getByLabel("E-mail address").fill(email);
  await page.getByLabel("Password").fill(password);
  await page.getByRole("button", { name: "Sign in" }).click();
}

/** The academy that the tests before began; begun here where these run alone. */
async function enterAsOwner(page: Page): Promise<void> {
  await page.goto("/start");
  if (!page.url().endsWith("/sign-in")) {
    await page.getByLabel("Name of the academy").fill("North Range");
    await page.getByLabel("Your name").fill("Coach Lark");
    await page.getByLabel("Your e-mail address").fill(OWNER.email);
    await page.getByLabel("A password").fill(OWNER.password);
    await page.getByRole("button", { name: "Start it" }).click();
  }
  await signIn(page, OWNER);
  await page.waitForURL("**/students");
}

async function noSidewaysScroll(page: Page): Promise<void> {
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
}

/** Opens a link as somebody else would: in a browser of their own, in which no script runs. */
async function plainBrowser(browser: Browser): Promise<Page> {
  const context = await browser.newContext({
    ...{ javaScriptEnabled: false, baseURL: served.address, storageState: { cookies: [], origins: [] } },
    viewport: { width: 390, height: 844 },
  });
  return context.newPage();
}

test("invited by a link, somebody chooses a password without scripts, signs in, and sees only their own students", async ({
  page,
  browser,
  watch,
}) => {
  watch.provoked.push(/status of 4\d\d/);
  await enterAsOwner(page);
  await addStudent(page, "Heron");
  await addStudent(page, "Plover");
  await page.getByRole("link", { name: "People", exact: true }).click();
  await expectAccessible(page);
  await noSidewaysScroll(page);
  await page.getByRole("link", { name: "Invite somebody" }).click();
  await page.getByLabel("Name", { exact: true }).fill("Coach Lark");
  await page.getByLabel("E-mail address").fill("bo@range.example");
  await page.getByRole("button", { name: "Make the link" }).click();
  await expect(page.locator("main [role=alert]").first()).toContainText("Nothing was changed yet");
  await expectAccessible(page);
  await noSidewaysScroll(page);
  await page.getByLabel("Name", { exact: true }).fill("Bo");
  await page.getByLabel(/^Coach: /).check();
  await page.getByRole("button", { name: "Make the link" }).click();
  const link = (await page.locator("code", { hasText: "/join/" }).textContent()) ?? "";
  await expectAccessible(page);
  await noSidewaysScroll(page);
  await page.reload();
  await expect(page.locator("code", { hasText: "/join/" })).toHaveCount(0);

  const plain = await plainBrowser(browser);
  // A mail scanner opens it too.
  expect((await plain.request.get(link)).status()).toBe(200);
  expect((await plain.goto(link))?.status()).toBe(200);
  await expect(plain.getByRole("heading", { level: 1 })).toHaveText("Welcome, Bo");
  await plain.getByLabel("A password").fill("too short");
  await plain.getByRole("button", { name: "Come in" }).click();
  await expect(plain.locator("[role=alert]")).toContainText("your link still opens");
  await plain.getByLabel("A password").fill(FRESH);
  await plain.getByRole("button", { name: "Come in" }).click();
  await expect(plain.getByText("Your account is there.")).toBeVisible();
  const dead = await plain.goto(link);
  expect(dead?.status()).toBe(404);
  await expect(plain.getByText("ask whoever gave you the link for a new one")).toBeVisible();

  await page.goto("/people/charges");
  await page.getByLabel(/^Heron/).check();
  await page.getByLabel("To", { exact: true }).selectOption({ label: "Bo" });
  await expectAccessible(page);
  await noSidewaysScroll(page);
  await page.getByRole("button", { name: "Give them" }).click();
  await expect(page.getByRole("status").first()).toContainText("in that coach’s charge");

  await signIn(plain, { email: "bo@range.example", password: FRESH });
  await plain.goto("/record");
  await expect(plain.getByRole("link", { name: "Heron" })).toBeVisible();
  await expect(plain.getByRole("link", { name: "Plover" })).toHaveCount(0);
  expect((await plain.goto("/people"))?.status()).toBe(404);
  await plain.context().close();
});

test("the own account and the second step hold at 390 px; the secret stands as text and picture", async ({ page }) => {
  await enterAsOwner(page);
  await page.getByRole("link", { name: "Coach Lark" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Your account");
  await expectAccessible(page);
  await noSidewaysScroll(page);
  await page.getByRole("link", { name: "Add the second step" }).click();
  await page.getByLabel("Your password").fill(OWNER.password);
  await page.getByRole("button", { name: "Begin" }).click();
  await expect(page.getByRole("img", { name: /Picture for your code program/ })).toBeVisible();
  await expect(page.locator("code")).toHaveText(/^[A-Z2-7]{4}( [A-Z2-7]{1,4})+$/);
  await expectAccessible(page);
  await noSidewaysScroll(page);
  await page.getByLabel("The six figures it shows now").fill("000000");
  await page.getByRole("button", { name: "Turn it on" }).click();
  await expect(page.locator("main [role=alert]").first()).toContainText("Nothing was changed yet");
});

test("ended, somebody is out with their next page, and their students are in nobody’s charge", async ({
  page,
  browser,
}) => {
  await enterAsOwner(page);
  const plain = await plainBrowser(browser);
  await plain.context().addCookies(OWN.cookies);
  await signIn(plain, { email: "bo@range.example", password: FRESH });
  await expect(plain).toHaveURL(/\/students$/);
  await page.goto("/people");
  await page.getByRole("link", { name: "Bo", exact: true }).click();
  await expectAccessible(page);
  await noSidewaysScroll(page);
  await page.getByRole("button", { name: "End their access" }).click();
  await expect(page.getByText("One student is in nobody’s charge")).toBeVisible();
  await plain.goto("/students");
  await expect(plain).toHaveURL(/\/sign-in/);
  await plain.context().close();
});
