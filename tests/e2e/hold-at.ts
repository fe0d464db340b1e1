import type { Page } from "playwright/test";
import { expect, expectAccessible } from "./watched";

/** Fails where a page isn't accessible, or is wider than the window at one of some widths, px. */
export async function expectToHold(page: Page, addresses: readonly string[], widths: readonly number[]): Promise<void> {
  for (const address of addresses) {
    await page.goto(address);
    await expectAccessible(page);
    for (const width of widths) {
      await page.setViewportSize({ width, height: 900 });
      const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect([address, width, over <= 0]).toEqual([address, width, true]);
    }
  }
}
