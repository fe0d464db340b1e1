import type { Page } from "playwright/test";

/** How the focus stands: what is wrong with it, empty where nothing is, and whether it has left the page. */
export async function focusFault(page: Page): Promise<{ readonly fault: string; readonly left: boolean }> {
  return page.evaluate(() => {
    const at = document.activeElement as HTMLElement | null;
    if (!at || at === document.body) return { fault: "", left: true };
    const box = at.getBoundingClientRect();
    const style = getComputedStyle(at);
    const named = `${at.tagName} ${at.getAttribute("name") ?? at.textContent?.trim().slice(0, 30)}`;
    const say = (fault: string) => ({ fault: `${named} ${fault}`, left: false });
    if (box.width === 0 || box.bottom <= 0 || box.top >= innerHeight) return say("is out of sight");
    // WCAG 2.4.11: some of it is seen. Where none of it is met from above, something lies over all of it.
    const across = [0.02, 0.5, 0.98].map((share) => box.left + share * box.width);
    const down = [0.05, 0.5, 0.95].map((share) => box.top + share * box.height);
    const met = across.flatMap((x) => down.map((y) => document.elementFromPoint(x, y)));
    const isMet = met.some(
      (each) => each && (at.contains(each) || each.contains(at) || each.closest("label")?.contains(at)),
    );
    const labels = [...((at as HTMLInputElement).labels ?? [])];
    if (!isMet && !labels.some((label) => met.some((each) => each && label.contains(each)))) return say("is covered");
    const marked = style.outlineStyle !== "none" || style.boxShadow !== "none";
    const inside = [...at.querySelectorAll("*")].some((each) => getComputedStyle(each).outlineStyle !== "none");
    const beside = labels.some((label) => getComputedStyle(label).outlineStyle !== "none");
    // Day, month, year and the calendar of a date are the browser's own parts, and show their own.
    if (marked || inside || beside || at.getAttribute("type") === "date") return { fault: "", left: false };
    return say("shows no focus");
  });
}

/** A way through pages by keyboard alone, with what was wrong with the focus on it. */
export interface KeyboardWay {
  readonly faults: string[];
  steps: number;
}

/** Goes on by Tab until something of that name has the focus. */
export async function tabTo(way: KeyboardWay, page: Page, name: RegExp | string): Promise<void> {
  for (let tried = 0; tried < 400; tried++) {
    await page.keyboard.press("Tab");
    way.steps++;
    const { fault } = await focusFault(page);
    if (fault !== "") way.faults.push(`${page.url()}: ${fault}`);
    const label = await page.evaluate(() => {
      const at = document.activeElement as HTMLInputElement | null;
      if (!at) return "";
      const labels = [...(at.labels ?? [])].map((each) => each.textContent?.trim() ?? "");
      return at.getAttribute("aria-label") ?? (labels.join(" ") || (at.textContent?.trim() ?? ""));
    });
    if (typeof name === "string" ? label === name : name.test(label)) return;
  }
  throw new Error(`no way by Tab to ${name}`);
}

/** Goes there and presses it. */
export async function pressAt(way: KeyboardWay, page: Page, name: RegExp | string): Promise<void> {
  await tabTo(way, page, name);
  await page.keyboard.press("Enter");
}
