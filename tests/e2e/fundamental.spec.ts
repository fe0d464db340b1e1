import type { Page } from "playwright/test";
import { analyzed } from "./analyzed";
import { expect, expectAccessible, test } from "./watched";

const figure = (page: Page, name: string) => page.getByRole("row", { name: new RegExp(`^${name}`) }).first();
const number = (value: number, decimals: number): string => value.toFixed(decimals).replace("-", "−");

for (const [who, address] of [
  ["a slip", "/students/s04/foot-line"],
  ["a gain", "/students/s01/trail-v"],
  ["not settled", "/students/s04/hip-sway"],
] as const)
  test(`${who}: the numbers of the page are those of analyze on its files`, async ({ page }) => {
    await page.goto(address);
    await page.getByText("How was this decided").click();
    const verdict = await analyzed(page);
    const { evidence, levelNow } = verdict;
    await expect(figure(page, "The films fit better, by")).toContainText(`(ln ${number(evidence.logBayesFactor, 2)})`);
    await expect(figure(page, "What this look asks for")).toContainText(`(ln ${number(evidence.limit, 2)})`);
    await expect(figure(page, "That nothing lasting happened")).toContainText(number(evidence.noChange * 100, 1));
    await expect(figure(page, "Policy version")).toContainText(verdict.policyVersion);
    const half = Math.max(
      (levelNow?.high95 ?? 0) - (levelNow?.estimate ?? 0),
      (levelNow?.estimate ?? 0) - (levelNow?.low95 ?? 0),
    );
    const decimals = half >= 3 ? 0 : 1;
    await expect(page.getByText(/^The level is/)).toContainText(
      `${number(levelNow?.estimate ?? Number.NaN, decimals)} ± ${number(half, decimals)}`,
    );
    await expectAccessible(page);
  });

test("films are asked about with sliders, by keyboard alone; without scripts a form says the same", async ({
  page,
  browser,
}) => {
  await page.goto("/students/s04/hip-sway");
  const form = page.locator("form[data-asking=live]");
  const said = form.getByRole("region");
  const films = form.getByRole("slider", { name: "Films on different days" });
  const before = await said.textContent();
  await films.focus();
  await films.press("End");
  await expect(films).toHaveAttribute("aria-valuetext", "8 films");
  await expect(said).toContainText("8 more films on different days");
  const swings = form.getByRole("slider", { name: "Swings in each" });
  await swings.focus();
  await swings.press("Home");
  await expect(said).toContainText("8 more films on different days, 3 swings each");
  expect(await said.textContent()).not.toBe(before);
  await expectAccessible(page);
  const plain = await browser.newContext({ javaScriptEnabled: false });
  const other = await plain.newPage();
  await other.goto("/students/s04/hip-sway");
  await other.getByLabel("Films on different days").selectOption("8");
  await other.getByLabel("Swings in each").selectOption("3");
  await other.getByRole("button", { name: "Say what these would tell" }).click();
  await expect(other).toHaveURL(/films=8/);
  const answered = other.locator("form[data-asking=plain]").getByRole("region");
  const plainly = (text: string | null): string => (text ?? "").replace(/\s+/g, " ");
  expect(plainly(await answered.textContent())).toBe(plainly(await said.textContent()));
  await plain.close();
});

test("a session is set aside and brought back from the page of a fundamental; what changed is said and kept", async ({
  page,
}) => {
  await page.goto("/students/s21/trail-v");
  await page.getByText("Table", { exact: true }).click();
  await page.getByRole("table", { name: "The numbers of the chart" }).getByRole("link").last().click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("Set aside or bring back");
  await expectAccessible(page);
  await page.getByLabel("Set aside the whole session").check();
  await page.getByLabel("Reason").fill("rain on the lens");
  await page.getByRole("button", { name: "Save" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("Set aside: the whole session");
  await expect(page.getByRole("heading", { level: 2 }).first()).toContainText(/Nothing said|say/);
  await expectAccessible(page);
  await page.getByRole("link", { name: "Change it again" }).click();
  await page.getByLabel(/^Bring back the whole session/).check();
  await page.getByLabel("Reason").fill("the lens was dry");
  await page.getByRole("button", { name: "Save" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("Brought back");
  await page.getByRole("link", { name: "This session, its history and undo" }).click();
  await expect(page.getByRole("row", { name: /rain on the lens/ }).first()).toBeVisible();
  await expect(page.getByRole("row", { name: /the lens was dry/ }).first()).toBeVisible();
});
