import { randomUUID } from "node:crypto";
import type { Page } from "playwright/test";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

/** Values of six fundamentals, five swings each, that stand nowhere else on a page. */
const READ = [
  ["41.73", "42.73", "43.73", "44.73", "45.73"],
  ["61,73", "62.73", "n", "64.73", "65.73"],
  ["-1.73", "−2.73", "1.73", "2.73", "0.73"],
  ["6.73", "7.73", "5.73", "8.73", "9.73"],
  ["31.73", "33.73", "35.73", "37.73", "39.73"],
  ["51.73", "53.73", "55.73", "57.73", "59.73"],
];
const FIRST = ["Trail-hand V", "Lead-hand V", "Foot line", "Side tilt, setup", "Posture bend", "Ball position"];

const cell = (page: Page, name: string, swing: number) =>
  page.getByLabel(`${name}, swing ${swing}`, { exact: true }).first();

/** Adds a student to the demo and opens the form of the first session. */
async function openForm(page: Page, alias: string): Promise<void> {
  await page.goto("/students/new");
  await page.getByLabel("Alias or first name").fill(alias);
  await page.getByLabel("left-handed").check();
  await page.getByLabel("Given by").fill("mother");
  await page.getByLabel("I hold this consent on paper.").check();
  await page.getByRole("button", { name: "Add the student" }).click();
  await page.getByRole("link", { name: "Add a session" }).click();
  await page.waitForURL(/[?&]draft=/);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(`A session of ${alias}`);
}

/** Goes to a cell once the page listens: the line that says where one is names it. */
async function goTo(page: Page, name: string, swing: number): Promise<void> {
  await expect(async () => {
    await cell(page, name, swing).blur();
    await cell(page, name, swing).focus();
    await expect(page.getByText(`${name} · Swing ${swing}`)).toBeVisible({ timeout: 1000 });
  }).toPass();
}

/** Lays a text on the clipboard's way into the focused cell. */
async function paste(page: Page, text: string): Promise<void> {
  await page.evaluate((copied) => {
    const data = new DataTransfer();
    data.setData("text/plain", copied);
    const event = new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true });
    document.activeElement?.dispatchEvent(event);
  }, text);
}

/** Whether what has the focus lies free: none of its corners is under anything that stays in sight. */
async function isFocusFree(page: Page): Promise<boolean> {
  return page.evaluate(() => {
    const focused = document.activeElement as HTMLElement;
    const { left, right, top, bottom } = focused.getBoundingClientRect();
    return [left + 3, right - 3].every((x) =>
      [top + 3, bottom - 3].every((y) => document.elementFromPoint(x, y) === focused),
    );
  });
}

test("five swings of six fundamentals go in by the keyboard alone, are saved, and found again", async ({ page }) => {
  await openForm(page, "Quillon");
  await goTo(page, FIRST[0] as string, 1);
  for (const value of READ.flat()) {
    await page.keyboard.type(value);
    await page.keyboard.press("Enter");
  }
  await expect(cell(page, "Lead-hand V", 3)).toHaveValue("n/m");
  await expect(cell(page, "Ball position", 5)).toHaveValue("59.73");
  await expect(page.getByText("30 of 30 cells are filled in the swings begun")).toBeVisible();
  await expectAccessible(page);
  // By keyboard to the button, and pressed.
  await page.getByRole("button", { name: "Save the session" }).press("Enter");
  await expect(page.getByRole("heading", { level: 1 })).toContainText("Saved: Quillon");
  const student = page.url().replace(/\/sessions\/.*/, "");
  const session = page.url().replace(/\/saved.*/, "");
  await page.goto(student);
  await expect(page.getByRole("heading", { name: /^One film more, on another day/ })).toBeVisible();
  for (const name of FIRST) await expect(page.getByRole("link", { name }).first()).toBeVisible();
  await page.goto(session);
  for (const value of ["41.7", "61.7", "−1.7", "59.7"]) await expect(page.getByText(value).first()).toBeAttached();
  // The next form is blind: neither page nor payload holds what was just read.
  for (const headers of [{ Accept: "text/html" }, { RSC: "1" }] as Record<string, string>[]) {
    // With a draft of its own, so that the answer is the form and not the way to it.
    for (const address of [`${student}/sessions/new?draft=${randomUUID()}`, `${student}/sessions/sheet`]) {
      const text = await (await page.request.get(address, { headers })).text();
      expect(text).toContain("Foot line");
      for (const value of READ.flat().filter((each) => /^[3-6]\d[.,]73$/.test(each)))
        expect([address, value, text.includes(value)]).toEqual([address, value, false]);
    }
  }
});

test("arrows, letters with their switch, a block from a spreadsheet, its undoing, an unusual value", async ({
  page,
}) => {
  await openForm(page, "Tarn");
  await goTo(page, "Trail-hand V", 2);
  await paste(page, "50\t−2,5\t\r\n\t61\tn/m\r\n");
  await expect(page.getByRole("status").filter({ hasText: "Pasted." })).toContainText("Cells filled: 4");
  await expect(cell(page, "Lead-hand V", 2)).toHaveValue("−2,5");
  await expect(cell(page, "Foot line", 3)).toHaveValue("n/m");
  await expect(cell(page, "Trail-hand V", 3)).toHaveValue("");
  await page.keyboard.press("Control+z");
  await expect(cell(page, "Lead-hand V", 2)).toHaveValue("");
  await paste(page, Array.from({ length: 10 }, () => "1\t2").join("\n"));
  await expect(page.getByText(/^Nothing was pasted: the block is 10 down by 2 across/)).toBeVisible();
  await expect(cell(page, "Trail-hand V", 2)).toHaveValue("");
  await page.keyboard.type("12");
  await page.keyboard.press("ArrowLeft");
  await expect(cell(page, "Trail-hand V", 2)).toBeFocused();
  await page.keyboard.press("End");
  await page.keyboard.press("ArrowRight");
  await expect(cell(page, "Lead-hand V", 2)).toBeFocused();
  await page.keyboard.type("400");
  await page.keyboard.press("s");
  await expect(cell(page, "Lead-hand V", 2)).toHaveValue("-400");
  await page.keyboard.press("ArrowDown");
  await expect(page.getByText("“-400” is unusual for this fundamental in anyone: sign or digit?")).toBeVisible();
  await expectAccessible(page);
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("k");
  await expect(page.getByLabel("I looked again: “-400” is right")).toBeChecked();
  // Letters off: n is a letter. It is remembered.
  await page.getByLabel("Single letters are keys in a cell").press("Space");
  await cell(page, "Foot line", 1).focus();
  await page.keyboard.type("n");
  await expect(cell(page, "Foot line", 1)).toHaveValue("n");
  await expect
    .poll(async () => {
      await page.reload();
      return page.getByLabel("Single letters are keys in a cell").isChecked();
    })
    .toBe(false);
  // The tests after this one find them on again: a press before the page listens, or one that isn't kept yet, is none.
  const letters = page.getByLabel("Single letters are keys in a cell");
  const turnOn = async () => {
    if (!(await letters.isChecked())) {
      const kept = page.waitForResponse((answer) => answer.request().method() === "POST", { timeout: 3000 });
      await letters.press("Space");
      await kept.catch(() => undefined);
    }
    await page.reload();
    return letters.isChecked();
  };
  await expect.poll(turnOn, { timeout: 40_000 }).toBe(true);
});

test("at 320 px each cell is a line, by swing or by checkpoint; what is typed stays, and the focus is never hidden", async ({
  page,
}) => {
  await page.setViewportSize({ width: 320, height: 640 });
  await page.goto("/students/s05/sessions/new");
  const first = page.locator("input[data-swing='0'][data-place='0']");
  await first.focus();
  await page.keyboard.type("7.7");
  const name = (await first.getAttribute("name")) as string;
  for (let i = 0; i < 14; i += 1) {
    await page.keyboard.press("Enter");
    expect(await isFocusFree(page)).toBe(true);
  }
  for (let i = 0; i < 14; i += 1) {
    await page.keyboard.press("Shift+Enter");
    expect(await isFocusFree(page)).toBe(true);
  }
  await page.getByRole("button", { name: "checkpoint by checkpoint" }).click();
  await expect(page.locator(`input[name="${name}"]`)).toHaveValue("7.7");
  expect(await page.locator(`input[name="${name}"]`).count()).toBe(1);
  await page.locator(`input[name="${name}"]`).focus();
  await page.keyboard.press("ArrowDown");
  await expect(page.locator(`input[name="${name.replace("r.1.", "r.2.")}"]`)).toBeFocused();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
  await expectAccessible(page);
  await page.getByRole("button", { name: "swing by swing" }).click();
});

test("the rest opens with one key, and no cell of it is hidden while one goes across it", async ({ page }) => {
  await page.setViewportSize({ width: 768, height: 700 });
  await page.goto("/students/s05/sessions/new");
  const rest = page.locator("details", { hasText: /^The rest/ });
  await expect(rest).not.toHaveAttribute("open", "");
  const first = page.locator("input[data-swing='1'][data-place='0']");
  // Once the page listens its line names the cell; a letter typed before is a word in it.
  await expect(async () => {
    await first.blur();
    await first.focus();
    await expect(page.getByText(/ · Swing 2$/).first()).toBeVisible({ timeout: 1000 });
  }).toPass();
  await page.keyboard.press("r");
  await expect(rest).toHaveAttribute("open", "");
  const steps = (await rest.locator("input[data-swing='1']").count()) - 1;
  expect(steps).toBeGreaterThan(5);
  for (const key of ["ArrowRight", "ArrowLeft"])
    for (let i = 0; i < steps; i += 1) {
      await page.keyboard.press(key);
      expect([key, i, await isFocusFree(page)]).toEqual([key, i, true]);
    }
  // What is typed there holds it open.
  await page.keyboard.type("1");
  await rest.locator("summary").press("Enter");
  await expect(page.getByText("The rest stays open: it holds what you typed.")).toBeVisible();
  await expect(rest).toHaveAttribute("open", "");
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(768);
});

test("without scripts the whole grid is there, the rest too, and what was typed into it keeps it open", async ({
  browser,
}) => {
  const context = await browser.newContext({ javaScriptEnabled: false, baseURL: served.address });
  const page = await context.newPage();
  await page.goto("/students/s05/sessions/new");
  const last = page.locator("input[name^='r.10.']").first();
  await expect(last).toBeVisible();
  const rest = page.locator("details", { hasText: /^The rest/ });
  await rest.locator("summary").click();
  await rest.locator("input[name^='r.1.']").first().fill("8o");
  await last.fill("999");
  await page.getByRole("button", { name: "Save the session" }).click();
  await expect(rest).toHaveAttribute("open", "");
  await expect(page.getByText("“8o” is not a number").first()).toBeVisible();
  await expect(page.getByLabel("I looked again: “999” is right")).toBeVisible();
  await expect(last).toHaveValue("999");
  await context.close();
});

test("the paper sheet is one page of A4 and of letter with eight fundamentals and ten swings", async ({ page }) => {
  await page.goto("/students/s05/sessions/sheet?swings=10");
  await page.getByText("Choose the fundamentals").click();
  const boxes = page.getByRole("group").getByRole("checkbox");
  for (let i = 0; i < 8; i += 1) await boxes.nth(i).check();
  await page.getByRole("button", { name: "Lay out the sheet" }).click();
  await expect(page.getByRole("columnheader")).toHaveCount(9);
  await expectAccessible(page);
  for (const format of ["A4", "Letter"]) {
    const sheet = (await page.pdf({ format, landscape: true })).toString("latin1");
    expect([format, sheet.match(/\/Type\s*\/Page\b/g)?.length]).toEqual([format, 1]);
  }
});
