import path from "node:path";
import { openDatabase } from "@/db/client";
import { wordsFor } from "@/lib/words/catalogue";
import { served } from "./served";
import { expect, expectAccessible, test } from "./watched";

const CARDS = ["face-on", "down-the-line"].flatMap((view) =>
  ["right", "left"].map((hand) => ({ view, hand, address: `/filming?view=${view}&hand=${hand}` })),
);

const PAPERS = ["A4", "Letter"] as const;

test("every card is accessible, and fits a phone, a tablet and a desk without sideways scrolling", async ({ page }) => {
  test.setTimeout(120_000);
  for (const { view, hand, address } of CARDS) {
    await page.goto(address);
    await expect(page.getByRole("heading", { level: 1 })).toHaveText(wordsFor("en").say(`card.title.${view}.${hand}`));
    await expect(page.getByRole("img")).toHaveCount(4);
    await expectAccessible(page);
    for (const width of [390, 768, 1440]) {
      await page.setViewportSize({ width, height: 900 });
      const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(over, `${address} ${width}`).toBeLessThanOrEqual(0);
      const cut = await page
        .getByRole("img")
        .evaluateAll((drawings) =>
          drawings.flatMap((drawing) =>
            [...drawing.querySelectorAll("text")]
              .map((text) => text.getBoundingClientRect())
              .filter((box) => box.left < 0 || box.right > window.innerWidth),
          ),
        );
      expect(cut, `${address} ${width}`).toEqual([]);
    }
  }
});

test("every card prints on one sheet, A4 or letter", async ({ page }) => {
  test.setTimeout(120_000);
  for (const { address } of CARDS)
    for (const format of PAPERS) {
      await page.goto(address);
      const margin = { top: "14mm", bottom: "14mm", left: "12mm", right: "12mm" };
      const paper = (await page.pdf({ format, margin })).toString("latin1");
      expect(paper.match(/\/Type\s*\/Page\b(?!s)/g) ?? [], `${address} ${format}`).toHaveLength(1);
    }
});

/** A student of the demo who plays from that side. */
function studentOf(hand: string): string {
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"), "read");
  try {
    const id = db.sqlite.prepare<[string], string>("SELECT id FROM student WHERE hand = ? LIMIT 1").pluck().get(hand);
    if (id === undefined) throw new Error(`the demo has no student whose hand is ${hand}`);
    return id;
  } finally {
    db.close();
  }
}

test("a student's season and session form lead to the card of the student's hand, without scripts too", async ({
  browser,
}) => {
  const context = await browser.newContext({ javaScriptEnabled: false, baseURL: served.address });
  const page = await context.newPage();
  const words = wordsFor("en");
  for (const hand of ["right", "left"])
    for (const from of ["", "/sessions/new"]) {
      await page.goto(`/students/${studentOf(hand)}${from}`);
      await page.getByRole("link", { name: words.say("filming.link") }).click();
      await expect(page.getByRole("heading", { level: 1 })).toHaveText(words.say(`card.title.face-on.${hand}`));
    }
  await context.close();
});
