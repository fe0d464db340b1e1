import type { Page } from "playwright/test";
import {
  clippedFaults,
  colourFaults,
  drawingNames,
  drawnShapes,
  handFaults,
  movingFaults,
  sidewaysFaults,
} from "./in-page";
import { inStretches } from "./in-stretches";
import type { PageState } from "./page-states";
import { expect, targetFaults, test } from "./watched";

// X2 to X6: what holds of every page in every state, whoever looks at it and on what. On a push one page of each layout.

test.describe.configure({ mode: "parallel" });

/** 1280 × 1024 px at 400 %, as WCAG 1.4.10 has it. */
const ZOOMED = { width: 320, height: 256 };
const WIDE = { width: 1280, height: 1024 };

/** The spacing that WCAG 1.4.12 asks a page to bear. */
const SPACED = `
  * { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
  p { margin-bottom: 2em !important; }`;

async function lookZoomed(page: Page): Promise<string[]> {
  await page.setViewportSize(ZOOMED);
  const faults = [...(await page.evaluate(sidewaysFaults)), ...(await page.evaluate(clippedFaults))];
  const style = await page.addStyleTag({ content: SPACED });
  const spaced = [...(await page.evaluate(sidewaysFaults)), ...(await page.evaluate(clippedFaults))];
  await page.setViewportSize(WIDE);
  spaced.push(...(await page.evaluate(sidewaysFaults)), ...(await page.evaluate(clippedFaults)));
  await style.evaluate((at) => (at as Element).remove());
  return [...faults.map((each) => `320 px: ${each}`), ...spaced.map((each) => `spaced: ${each}`)];
}

/** Shapes that only their hue tells apart. */
function told(shapes: Awaited<ReturnType<typeof drawnShapes>>): string[] {
  const hues = new Map<string, Set<string>>();
  for (const { geometry, hue } of shapes)
    if (hue !== "") hues.set(geometry, (hues.get(geometry) ?? new Set()).add(hue));
  return [...hues].filter(([, found]) => found.size > 1).map(([geometry]) => `told by colour alone: ${geometry}`);
}

async function lookColoured(page: Page): Promise<string[]> {
  const before = await page.evaluate(drawnShapes);
  const faults = told(before);
  const shown = new Set(before.filter(({ seen }) => seen === "seen").map(({ at }) => at));
  for (const colorScheme of ["light", "dark"] as const) {
    await page.emulateMedia({ forcedColors: "active", colorScheme });
    const forced = await page.evaluate(drawnShapes);
    faults.push(
      ...forced
        .filter(({ at, seen }) => seen === "unseen" && shown.has(at))
        .map(({ at }) => `forced, ${colorScheme}: lost ${at}`),
    );
  }
  await page.emulateMedia({ forcedColors: null, colorScheme: null, media: "print" });
  faults.push(...(await page.evaluate(colourFaults)).map((each) => `print: ${each}`));
  await page.emulateMedia({ media: null, reducedMotion: "reduce" });
  faults.push(...(await page.evaluate(movingFaults)));
  await page.emulateMedia({ reducedMotion: null });
  return faults;
}

async function look(page: Page, { path, state }: PageState): Promise<string[]> {
  await page.setViewportSize(WIDE);
  const answer = await page.goto(path);
  if ((answer?.status() ?? 0) >= 400) return state === "full" ? [`${path}: ${answer?.status()}`] : [];
  const faults = [
    ...(await lookZoomed(page)),
    ...(await lookColoured(page)),
    ...(await page.evaluate(drawingNames)).filter(({ name }) => name === "").map(({ at }) => `no name: ${at}`),
    ...(await page.evaluate(handFaults)),
  ];
  await page.setViewportSize({ width: 390, height: 844 });
  faults.push(...(await targetFaults(page)));
  return faults.map((each) => `${state} ${path}: ${each}`);
}

inStretches({
  title: (pages) => `X2 to X6: ${pages} holds`,
  bare: "Bare",
  pageMs: 15_000,
  look: async (page, states) => {
    const faults: string[] = [];
    for (const one of states) faults.push(...(await look(page, one)));
    console.log(`X2 to X6: ${states.length} pages`);
    expect(faults).toEqual([]);
  },
});
