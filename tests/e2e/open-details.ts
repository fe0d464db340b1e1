import { expect, type Locator, type Page } from "playwright/test";

/** Opens a part that is shut until what lies in it is seen: what is opened while the scripts take over may be shut by them once. */
export async function openDetails(page: Page, summary: string, inside: Locator): Promise<Locator> {
  await expect(async () => {
    if (!(await inside.isVisible())) await page.getByText(summary).first().click();
    await expect(inside).toBeVisible({ timeout: 2000 });
  }).toPass({ timeout: 30_000 });
  return inside;
}
