import { readFileSync } from "node:fs";
import { type BrowserContext, test as base, expect, type Page } from "playwright/test";
import { served } from "./served";

const axeSource = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");
const WCAG = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

interface Watch {
  /** What a test provokes on purpose, and so may be heard. */
  readonly provoked: RegExp[];
}

function listen(context: BrowserContext, heard: string[]): void {
  context.on("console", (message) => {
    if (message.type() === "error") heard.push(`console: ${message.text()} (${message.location().url})`);
  });
  context.on("weberror", (error) => heard.push(`error: ${error.error().message}`));
  context.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith(`${served.address}/`) && !/^(data|blob|about):/.test(url)) heard.push(`outside: ${url}`);
  });
}

/** A test that fails on any error in the console, any violation of the policy and any request to the outside. */
export const test = base.extend<{ watch: Watch }>({
  watch: [
    async ({ context }, use) => {
      const watch: Watch = { provoked: [] };
      const heard: string[] = [];
      listen(context, heard);
      await use(watch);
      const unexpected = heard.filter((line) => !watch.provoked.some((pattern) => pattern.test(line)));
      expect(unexpected).toEqual([]);
    },
    { auto: true },
  ],
});

export { expect };

/** What a page says about a refusal; the framework keeps an announcer of its own, empty. */
export function alert(page: Page) {
  return page.locator("main [role=alert]").first();
}

/** Fails on anything that the accessibility rules find on the page as it stands. */
export async function expectAccessible(page: Page): Promise<void> {
  // On the way from page to page the old title is gone before the new one stands; what stays wrong stays wrong.
  await expect(async () => {
    await page.evaluate(axeSource);
    const violations = await page.evaluate(async (tags) => {
      const axe = (window as unknown as { axe: { run: (root: Document, options: object) => Promise<AxeResult> } }).axe;
      const found = await axe.run(document, { runOnly: tags });
      return found.violations.map((each) => `${each.id}: ${each.nodes.map((node) => node.html).join(" ")}`);
    }, WCAG);
    expect(violations).toEqual([]);
  }).toPass({ intervals: [300, 700], timeout: 20_000 });
}

interface AxeResult {
  readonly violations: readonly { readonly id: string; readonly nodes: readonly { readonly html: string }[] }[];
}
