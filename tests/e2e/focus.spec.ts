import type { Page } from "playwright/test";
import { FULL } from "../many-cases";
import { focusFault } from "./by-keyboard";
import { inStretches } from "./in-stretches";
import type { PageState } from "./page-states";
import { expect, test } from "./watched";

// X1: over pages by keyboard alone. The focus is seen and nothing lies over it, no part keeps it, and no letter does anything.

test.describe.configure({ mode: "parallel" });

/** Low enough that what stays in sight could cover what has the focus, and what a coach has. */
const SIZES = FULL
  ? [
      { width: 320, height: 256 },
      { width: 1280, height: 720 },
    ]
  : [{ width: 320, height: 256 }];

/** The browser's own stops: within a field of day and time, and at each part that scrolls. */
const OWN_STOPS = { date: 6, part: 60 };

/** Goes over a page by Tab until the focus has left it. */
async function tabOver(page: Page): Promise<{ readonly faults: string[]; readonly stops: number }> {
  const most = await page.evaluate(({ date, part }) => {
    const all = document.querySelectorAll(
      "a[href], button, input:not([type=hidden]), select, textarea, summary, [tabindex]",
    );
    return all.length + date * document.querySelectorAll("input[type=date], input[type=datetime-local]").length + part;
  }, OWN_STOPS);
  const faults = new Set<string>();
  let wasFirst = true;
  for (let stops = 1; stops <= most; stops++) {
    await page.keyboard.press("Tab");
    const { fault, left } = await focusFault(page);
    const isFirst = await page.evaluate((stop) => {
      if (stop === 1) document.activeElement?.setAttribute("data-first-stop", "");
      return document.activeElement?.hasAttribute("data-first-stop") ?? false;
    }, stops);
    // Out of the page, or round it: both ways nothing has kept it.
    if (left || (isFirst && !wasFirst)) return { faults: [...faults], stops };
    wasFirst = isFirst;
    if (fault !== "") faults.add(fault);
  }
  return { faults: [...faults, `the focus doesn't leave within ${most} steps`], stops: most };
}

const LETTERS = [..."abcdefghijklmnopqrstuvwxyz0123456789?/+-"];

/** What a single letter does while nothing has the focus. */
async function letterFaults(page: Page): Promise<string[]> {
  const state = () =>
    page.evaluate(() => {
      // What isn't seen the page's own scripts set when they take over, which may be meanwhile.
      const seen = "input:not([type=hidden]), select, textarea";
      const fields = [...document.querySelectorAll<HTMLInputElement>(seen)];
      const opened = document.querySelectorAll("details[open], dialog[open]").length;
      const typed = fields.map(({ value, checked }) => `${value} ${checked}`).join("\n");
      return [location.href, opened, scrollY, document.activeElement?.tagName, typed].join(" ");
    });
  await page.evaluate(() => {
    (document.activeElement as HTMLElement | null)?.blur();
    scrollTo(0, 0);
  });
  const before = await state();
  for (const letter of LETTERS) await page.keyboard.press(letter);
  const after = await state();
  return after === before ? [] : [`a letter did something: ${before}, then ${after}`];
}

async function look(page: Page, { path, state }: PageState): Promise<{ faults: string[]; stops: number }> {
  const faults: string[] = [];
  let stops = 0;
  for (const size of SIZES) {
    await page.setViewportSize(size);
    const answer = await page.goto(path, { waitUntil: "load" });
    if ((answer?.status() ?? 0) >= 400) break;
    faults.push(...(await letterFaults(page)));
    const over = await tabOver(page);
    stops += over.stops;
    faults.push(...over.faults.map((each) => `${size.width} px: ${each}`));
  }
  return { faults: faults.map((each) => `${state} ${path}: ${each}`), stops };
}

inStretches({
  title: (pages) => `X1: over ${pages} by Tab`,
  bare: "Tab",
  pageMs: 30_000,
  look: async (page, states) => {
    const faults: string[] = [];
    let steps = 0;
    for (const one of states) {
      const { faults: found, stops } = await look(page, one);
      faults.push(...found);
      steps += stops;
    }
    console.log(`X1: ${states.length} pages, ${steps} steps of the Tab key`);
    expect(faults).toEqual([]);
  },
});
