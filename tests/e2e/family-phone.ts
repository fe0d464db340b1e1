import path from "node:path";
import type { BrowserContext, Locator, Page } from "playwright/test";
import { openDatabase } from "@/db/client";
import { addDemoFamily, demoFamilyCookie, demoPageId } from "./demo-family";
import { served } from "./served";
import { test } from "./watched";

/** The page of somebody with a drill in hand, on which these tests alone write. */
export const PAGE = demoPageId("practised");
export const AT = `/family/${PAGE}`;

export function withData<T>(work: (sqlite: ReturnType<typeof openDatabase>["sqlite"]) => T): T {
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"));
  try {
    return work(db.sqlite);
  } finally {
    db.close();
  }
}
const OWN = "student_id = 's04' AND source = 'family'";
/** What the family of that page has written down. */
export const rows = () =>
  withData((sqlite) =>
    sqlite
      .prepare<[], { minutes: number | null; balls: number | null; felt: string | null; pain: string | null }>(
        `SELECT minutes, balls, felt, pain FROM practice WHERE ${OWN} AND voided_at IS NULL ORDER BY recorded_at, id`,
      )
      .all(),
  );

export async function letIn(context: BrowserContext): Promise<void> {
  const [name = "", value = ""] = demoFamilyCookie("practised").split("=");
  await context.addCookies([{ name, value, url: served.address }]);
}
/** What the phone keeps. */
export const kept = (page: Page) =>
  page.evaluate(() =>
    Object.entries(localStorage)
      .filter(([name]) => name.startsWith("proofband-practice"))
      .map(([, value]) => value),
  );
export const answer = (page: Page, said: "no" | "yes"): Locator =>
  page.locator("[data-log=tap]").getByRole("radio", { name: said, exact: true });
export const button = (page: Page, minutes: number): Locator =>
  page.getByRole("button", { name: new RegExp(`^${minutes} min for `) });
/** The script of the page has taken its forms over. */
export const lives = (page: Page) =>
  page.waitForFunction(() => document.querySelector("[data-log=tap]")?.closest("section")?.dataset.keeps === "yes");

/** Begins each test with nothing written down, on a phone that the link was opened on. */
export function onThePhone(): void {
  test.use({ viewport: { width: 390, height: 844 } });
  test.describe.configure({ mode: "serial" });
  test.beforeAll(() => addDemoFamily());
  test.beforeEach(async ({ context, page, watch }) => {
    // A phone without signal says so in its console.
    watch.provoked.push(/ERR_INTERNET_DISCONNECTED|Failed to load resource/);
    withData((sqlite) => sqlite.exec(`DELETE FROM practice WHERE ${OWN}`));
    await letIn(context);
    await page.goto(AT);
    await page.evaluate(() => localStorage.clear());
  });
  test.afterAll(() => {
    withData((sqlite) => sqlite.exec(`DELETE FROM practice WHERE ${OWN}`));
  });
}
