import { cpSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Page } from "playwright/test";
import { type OtherServer, startOther } from "../trust/other-server";
import { addDemoFamily, demoFamilyCookie, demoPageId } from "./demo-family";
import { PROVED } from "./page-states";
import { MADE_DEMO } from "./served";
import { expect, test } from "./watched";

/*
 * Key pages compared with their approved pictures, on a demo that no other test touches and whose day stands still. What is
 * approved lies in tests/e2e/pictures; `npm run pictures` draws them anew, to be looked at before they are committed.
 */

test.describe.configure({ mode: "serial" });

let server: OtherServer;
let family = "";

test.beforeAll(async () => {
  test.setTimeout(120_000);
  const data = mkdtempSync(path.join(tmpdir(), "proofband-pictures-"));
  cpSync(MADE_DEMO, data, { recursive: true });
  addDemoFamily(data, "2099-01-01T12:00:00.000Z");
  family = demoFamilyCookie("live", data);
  server = await startOther(data);
});
test.afterAll(() => server?.stop());

// Here the outside is the tests' usual server.
test.beforeEach(({ watch }) => {
  watch.provoked.push(new RegExp(`^outside: http://127.0.0.1:${server.port}/`));
});

test.use({ storageState: { cookies: [], origins: [] } });

interface Picture {
  readonly name: string;
  readonly path: string;
  readonly width: number;
  readonly height: number;
  readonly media?: Parameters<Page["emulateMedia"]>[0];
}

/** A4 between its margins, in px. */
const PAPER = { width: 703, height: 1017 };

const PICTURES: readonly Picture[] = [
  { name: "roster", path: "/students", width: 1280, height: 1400 },
  { name: "roster-narrow", path: "/students", width: 390, height: 1200 },
  { name: "season", path: "/students/s01", width: 1280, height: 1400 },
  { name: "fundamental", path: PROVED, width: 1280, height: 1200 },
  { name: "fundamental-dark", path: PROVED, width: 1280, height: 1200, media: { colorScheme: "dark" } },
  { name: "fundamental-print", path: PROVED, ...PAPER, media: { media: "print" } },
  { name: "record", path: "/record", width: 1280, height: 900 },
  { name: "family", path: `/family/${demoPageId("live")}`, width: 390, height: 1400 },
];

/** Letters are drawn a little otherwise on another machine, and lines lie a pixel beside: so much may differ, and no part of a page. */
const TOLERANCE = { maxDiffPixelRatio: 0.015, threshold: 0.3 } as const;

async function draw(page: Page, { path: way, width, height, media }: Picture): Promise<void> {
  await page.setViewportSize({ width, height });
  await page.emulateMedia({ media: null, colorScheme: "light", reducedMotion: "reduce", ...media });
  await page.goto(`http://127.0.0.1:${server.port}${way}`, { waitUntil: "networkidle" });
  await page.evaluate(() => document.fonts.ready);
}

test("key pages look as approved", async ({ page, context }) => {
  const [name = "", value = ""] = family.split("=");
  const address = `http://127.0.0.1:${server.port}`;
  await context.addCookies([{ name, value, url: address }]);
  await page.goto(`${address}/`);
  await page.getByRole("button", { name: "Look as Coach Wren" }).click();
  await page.waitForURL("**/students");
  for (const picture of PICTURES) {
    await draw(page, picture);
    await expect.soft(page, picture.name).toHaveScreenshot(`${picture.name}.png`, TOLERANCE);
  }
});
