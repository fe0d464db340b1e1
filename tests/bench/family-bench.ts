import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { type Browser, chromium } from "playwright";
import { addDemoFamily, demoFamilyCookie, demoPageId } from "../e2e/demo-family";
import { beyond, sumOf, weighScripts } from "../e2e/scripts-of";
import { answerAgain } from "./answered-again";
import type { Measured } from "./measured";
import { serveBuilt } from "./served-bench";

/** Of the demo: a whole season, a drill in hand, practice. */
const LINK = "practised";
/** A phone at a range: 1.6 Mbit/s, 150 ms there and back, a processor of a quarter of this one (issue 8, point 8). */
const LINE = { offline: false, latency: 150, downloadThroughput: 200_000, uploadThroughput: 93_750 } as const;
const SLOWER = 4;
const BOUND_MS = 1500;
const TIMES = 9;

// A frame is painted when the next task of the highest priority has its turn; a task of any other would wait for the scripts.
const AGENT = `(() => {
  const seen = () => {
    const sizes = (what) => [...document.querySelectorAll(what)].map((each) => each.getBoundingClientRect());
    const has = (what, least) => sizes(what).some(({ width, height }) => width > least && height > 0);
    if (!has("h1", 0) || !has("[data-task] li", 0) || !has("main svg", 200)) return requestAnimationFrame(seen);
    scheduler.postTask(() => { window.shownAt = performance.now(); }, { priority: "user-blocking" });
  };
  requestAnimationFrame(seen);
})()`;

interface Opened {
  readonly readable: number;
  readonly answered: number;
  readonly loaded: number;
}

function chromiumFile(): string {
  const found = (process.env.PATH ?? "")
    .split(path.delimiter)
    .map((folder) => path.join(folder, "chromium"))
    .find((file) => existsSync(file));
  if (found === undefined) throw new Error("no chromium is in the path");
  return found;
}

/** One opening by a browser that has seen nothing of this server yet. */
async function open(browser: Browser, address: string, cookie: string): Promise<Opened> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, deviceScaleFactor: 3 });
  try {
    const [name = "", value = ""] = cookie.split("=");
    await context.addCookies([{ name, value, url: address }]);
    const page = await context.newPage();
    await page.addInitScript(AGENT);
    const line = await context.newCDPSession(page);
    await line.send("Network.enable");
    await line.send("Network.emulateNetworkConditions", LINE);
    await line.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
    await page.goto(`${address}/family/${demoPageId(LINK)}`, { waitUntil: "load" });
    await page.waitForFunction(
      () => "shownAt" in window && performance.getEntriesByName("first-contentful-paint").length > 0,
    );
    return await page.evaluate(() => {
      const [at] = performance.getEntriesByType("navigation") as PerformanceNavigationTiming[];
      const [painted] = performance.getEntriesByName("first-contentful-paint");
      const { shownAt } = window as unknown as { readonly shownAt: number };
      return {
        readable: Math.max(shownAt, painted?.startTime ?? Number.NaN),
        answered: at?.responseStart ?? Number.NaN,
        loaded: at?.loadEventEnd ?? Number.NaN,
      };
    });
  } finally {
    await context.close();
  }
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

async function sayWeight(address: string, cookie: string): Promise<string> {
  const text = async (page: string) => (await fetch(`${address}${page}`, { headers: { cookie } })).text();
  const family = await weighScripts(address, await text(`/family/${demoPageId(LINK)}`));
  const empty = await weighScripts(address, await text("/there-is-no-such-page"));
  const inline = family.inline - empty.inline;
  return `scripts ${beyond(family, empty)} B gzip beyond an empty page's ${sumOf(empty)} B; of the framework inline ${inline} B beyond ${empty.inline} B; the page ${family.page} B`;
}

/** How soon a family's page can be read on a slow phone, from asking for it until its sentences, picture and task are painted. */
export async function familyFigures(kept: string | undefined): Promise<readonly Measured[]> {
  const folder = kept ?? mkdtempSync(path.join(os.tmpdir(), "proofband-family-"));
  process.env.PROOFBAND_DATA = folder;
  try {
    const prepare = ["--import", "tsx", path.join("app", "_commands", "prepare.ts")];
    const { status } = spawnSync(process.execPath, prepare, { env: { ...process.env, NODE_ENV: "production" } });
    if (status !== 0) throw new Error("the demo could not be filled");
    addDemoFamily(folder);
    const cookie = demoFamilyCookie(LINK, folder);
    const server = await serveBuilt();
    if (server === null) {
      console.error("no build is there, so no page was opened; npm run build makes one");
      return [];
    }
    const again = await answerAgain(server.address);
    const browser = await chromium.launch({ executablePath: chromiumFile(), args: ["--no-sandbox", "--disable-gpu"] });
    try {
      const weight = await sayWeight(server.address, cookie);
      // What the first two ask for is learned of the server.
      for (const _ of [1, 2]) await open(browser, again.address, cookie);
      // From here on the stand-in answers: the server's own work in the background would be the phone's.
      server.stop();
      const opened: Opened[] = [];
      for (let round = 0; round < TIMES; round++) opened.push(await open(browser, again.address, cookie));
      const all = (name: keyof Opened): number[] => opened.map((each) => each[name]);
      const figure = (what: string, name: keyof Opened, bound: number | null, also: string): Measured => ({
        what: `family's page at 1.6 Mbit/s, 150 ms, a quarter of the processor: ${what}`,
        ...{ times: TIMES, median: median(all(name)), slowest: Math.max(...all(name)), also, bound },
      });
      const share = (100 * median(all("readable"))) / BOUND_MS;
      return [
        figure("answered", "answered", null, ""),
        figure("readable", "readable", BOUND_MS, `${share.toFixed(0)} % of the bound`),
        figure("all loaded", "loaded", null, weight),
      ];
    } finally {
      await browser.close();
      again.close();
      server.stop();
    }
  } finally {
    if (kept === undefined) rmSync(folder, { recursive: true, force: true });
  }
}
