import { readFileSync } from "node:fs";
import { type Browser, type BrowserContext, test as base, expect, type Page } from "playwright/test";
import { served } from "./served";

const axeSource = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");
const WCAG = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

interface Watch {
  /** What a test provokes on purpose, and so may be heard. */
  readonly provoked: RegExp[];
}

function listen(context: BrowserContext, address: string, hear: (line: string) => void): void {
  context.on("console", (message) => {
    if (message.type() === "error") hear(`console: ${message.text()} (${message.location().url})`);
  });
  context.on("weberror", (error) => hear(`error: ${error.error().message}`));
  context.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith(`${address}/`) && !/^(data|blob|about):/.test(url)) hear(`outside: ${url}`);
  });
}

/** Windows that a test opens besides may be told no; what breaks the policy or goes outside is heard there too. */
const ALWAYS_HEARD = /Content Security Policy|^outside: /i;

function listenToOthers(browser: Browser, address: string, heard: string[]): () => void {
  const open = browser.newContext.bind(browser);
  browser.newContext = async (options) => {
    const context = await open(options);
    listen(context, address, (line) => {
      if (ALWAYS_HEARD.test(line)) heard.push(line);
    });
    return context;
  };
  return () => {
    browser.newContext = open;
  };
}

/** A test that fails on any error in the console, any violation of the policy and any request to the outside. */
export const test = base.extend<{ watch: Watch }, { entered: string }>({
  entered: [
    async ({ browser }, use) => {
      const context = await browser.newContext({ baseURL: served.address, locale: "en-GB" });
      const page = await context.newPage();
      await page.goto("/");
      await page.getByRole("button", { name: "Look as Coach Wren" }).click();
      await page.waitForURL("**/students");
      await context.storageState({ path: served.signedIn });
      await context.close();
      await use(served.signedIn);
    },
    // Raw requests bear these cookies too, so every file of tests begins with them.
    { scope: "worker", auto: true },
  ],
  storageState: ({ entered }, use) => use(entered),
  // Said here and not in the configuration: only a worker knows which server is its own.
  baseURL: served.address,
  watch: [
    async ({ context, browser, baseURL }, use) => {
      const watch: Watch = { provoked: [] };
      const heard: string[] = [];
      listen(context, baseURL ?? "", (line) => heard.push(line));
      const leave = listenToOthers(browser, baseURL ?? "", heard);
      await use(watch);
      leave();
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

/** X6: what is pressed on a page and is under 24 px, without room around it. */
export async function targetFaults(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axeSource);
  return page.evaluate(async () => {
    const axe = (window as unknown as { axe: { run: (root: Document, options: object) => Promise<AxeResult> } }).axe;
    const found = await axe.run(document, { runOnly: { type: "rule", values: ["target-size"] } });
    return found.violations.flatMap(({ nodes }) =>
      nodes.map(({ html }) => `too small to press: ${html.slice(0, 120)}`),
    );
  });
}

/** Fails on anything that the accessibility rules find on the page as it stands. */
export async function expectAccessible(page: Page): Promise<void> {
  // On the way from page to page the old title is gone before the new one stands; what stays wrong stays wrong.
  await expect(async () => {
    if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axeSource);
    const violations = await page.evaluate(async (tags) => {
      const axe = (window as unknown as { axe: { run: (root: Document, options: object) => Promise<AxeResult> } }).axe;
      const found = await axe.run(document, { runOnly: tags, resultTypes: ["violations"] });
      return found.violations.map((each) => `${each.id}: ${each.nodes.map((node) => node.html).join(" ")}`);
    }, WCAG);
    expect(violations).toEqual([]);
  }).toPass({ intervals: [300, 700], timeout: 20_000 });
}

interface AxeResult {
  readonly violations: readonly { readonly id: string; readonly nodes: readonly { readonly html: string }[] }[];
}
