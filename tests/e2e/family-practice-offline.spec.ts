import { AT, answer, button, kept, lives, onThePhone, PAGE, rows, withData } from "./family-phone";
import { expect, expectAccessible, test } from "./watched";

// Practice written down without signal: kept on the phone, sent once, and gone from it when it may be shown no more.

onThePhone();

test("without signal a log is kept, shown, kept once for a double tap, and sent once when there is signal", async ({
  page,
  context,
}) => {
  await lives(page);
  await context.setOffline(true);
  await answer(page, "no").check();
  await button(page, 10).dblclick();
  await expect(page.getByText("It is kept on this phone")).toBeVisible();
  // Asked every time.
  await expect(answer(page, "no")).not.toBeChecked();
  await page.getByText("Write more down, or for yesterday").click();
  const exact = page.locator("[data-log=exact]");
  await exact.getByLabel("yesterday").check();
  await exact.getByLabel("Minutes").fill("400");
  await exact.getByLabel("no", { exact: true }).check();
  await exact.getByRole("button").click();
  await expect(page.getByText("That is more than 5 hours in one day.")).toBeVisible();
  expect(await kept(page)).toHaveLength(1);
  await exact.getByLabel("Minutes").fill("20");
  await exact.getByLabel("hard").check();
  await exact.getByRole("button").click();
  await expect(page.getByRole("button", { name: /^Throw away: / })).toHaveCount(2);
  await expectAccessible(page);
  const [today, yesterday] = await page
    .locator("[data-log=exact] input[name=day]")
    .evaluateAll((days) => days.map((day) => (day as HTMLInputElement).value));
  const lying = (await kept(page)).map((text) => JSON.parse(text)).sort((a, b) => b.day.localeCompare(a.day));
  expect(lying).toEqual([
    { key: expect.any(String), day: today, minutes: "10", balls: "", felt: "", hurts: "no" },
    { key: expect.any(String), day: yesterday, minutes: "20", balls: "", felt: "hard", hurts: "no" },
  ]);
  await page.getByRole("button", { name: "Send now" }).click();
  await expect(page.getByText("Nothing is lost: it stays kept here.")).toBeVisible();
  await context.setOffline(false);
  await expect(page.getByText("What was kept on this phone is saved now")).toBeVisible();
  expect(rows().map(({ minutes, felt }) => [minutes, felt])).toEqual(
    expect.arrayContaining([
      [10, null],
      [20, "hard"],
    ]),
  );
  expect([rows().length, await kept(page)]).toEqual([2, []]);
});

test("what lies kept is sent at the next opening, from two tabs at once only once; what is refused stays with its reason until it is thrown away", async ({
  page,
  context,
}) => {
  await page.evaluate((pageId) => {
    const put = (key: string, day: string) => {
      const log = { key, day, minutes: "15", balls: "", felt: "", hurts: "no" };
      localStorage.setItem(`proofband-practice ${pageId} ${key}`, JSON.stringify(log));
    };
    const today = document.querySelector<HTMLInputElement>("[data-log=tap] [name=day]")?.value ?? "";
    put("11111111-1111-4111-8111-111111111111", today);
    // A phone whose clock was wrong would have sent these; the page's own days are the server's.
    put("22222222-2222-4222-8222-222222222222", "2099-01-01");
    put("33333333-3333-4333-8333-333333333333", "2001-01-01");
  }, PAGE);
  const other = await context.newPage();
  await Promise.all([page.goto(AT), other.goto(AT)]);
  await expect(page.getByText("Not saved. That day has not come yet where you are.")).toBeVisible();
  await expect(page.getByText("Not saved. That was more than 7 days ago.")).toBeVisible();
  expect(rows()).toEqual([{ minutes: 15, balls: null, felt: null, pain: null }]);
  for (let left = 2; left > 0; left--) {
    await expect(page.getByRole("button", { name: /^Throw away: / })).toHaveCount(left);
    await page
      .getByRole("button", { name: /^Throw away: / })
      .first()
      .click();
  }
  expect(await kept(page)).toEqual([]);
  // Another tab shows it too.
  await expect(other.getByRole("button", { name: /^Throw away: / })).toHaveCount(0);
});

test("a yes without signal says “stop” at once, keeps neither place nor name, and is asked again at the next opening", async ({
  page,
  context,
}) => {
  await lives(page);
  await context.setOffline(true);
  await answer(page, "yes").check();
  await page.getByLabel("Where does it hurt?").selectOption({ label: "knee" });
  await page.getByRole("button", { name: /it hurts$/ }).click();
  await expect(page.getByText("Your coach does not know it yet.")).toBeVisible();
  await expect(page.locator("[data-task]")).toBeHidden();
  expect(await page.evaluate(() => JSON.stringify({ ...localStorage }))).toBe(
    JSON.stringify({ [`proofband-practice ${PAGE} ask`]: "ask" }),
  );
  await context.setOffline(false);
  await page.goto(AT);
  await expect(page.getByText("Your coach does not know it yet.")).toBeVisible();
  await expect(page.locator("[data-task]")).toBeHidden();
  await expectAccessible(page);
  expect(rows()).toEqual([]);
  await page.getByLabel("Where does it hurt?").selectOption({ label: "knee" });
  await page.getByRole("button", { name: /it hurts$/ }).click();
  await expect(page.getByText("You said that something hurts: knee.")).toBeVisible();
  expect([rows(), await kept(page)]).toEqual([[{ minutes: null, balls: null, felt: null, pain: "knee" }], []]);
});

test("a browser that keeps nothing says so, and sends from the open page", async ({ page, context }) => {
  await page.addInitScript(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException("blocked", "QuotaExceededError");
    };
  });
  await page.goto(AT);
  await lives(page);
  await context.setOffline(true);
  await answer(page, "no").check();
  await button(page, 10).click();
  await expect(page.getByText("this browser cannot keep it")).toBeVisible();
  await context.setOffline(false);
  await expect.poll(() => rows().length).toBe(1);
});

const revoke = (at: string | null) =>
  withData((sqlite) => sqlite.prepare("UPDATE family_link SET revoked_at = ? WHERE id = ?").run(at, PAGE));

test("taken back meanwhile: the kind sentence says what of this phone is gone, and nothing lies there any more", async ({
  page,
  context,
}) => {
  await lives(page);
  await context.setOffline(true);
  await answer(page, "no").check();
  await button(page, 10).click();
  await expect(page.getByRole("button", { name: /^Throw away: / })).toHaveCount(1);
  revoke("2026-11-01T08:00:00.000Z");
  try {
    await context.setOffline(false);
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("We can’t show a page from here");
    const main = page.getByRole("main");
    await expect(main).toContainText("Please open the link in your coach’s message again.");
    await expect(main).toContainText(/It is gone from the phone now: .*10 min/);
    expect([await kept(page), rows()]).toEqual([[], []]);
  } finally {
    revoke(null);
  }
});

test("taken back before the page is opened again: the same, by the page that says so", async ({ page }) => {
  await page.evaluate((pageId) => {
    const log = { key: "k", day: "2026-03-01", minutes: "15", balls: "", felt: "", hurts: "no" };
    localStorage.setItem(`proofband-practice ${pageId} k`, JSON.stringify(log));
    localStorage.setItem("proofband-practice another-page k", JSON.stringify(log));
  }, PAGE);
  revoke("2026-11-01T08:00:00.000Z");
  try {
    await page.goto(AT);
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("We can’t show a page from here");
    await expect(page.getByText("It is gone from the phone now: 2026-03-01: 15 min")).toBeVisible();
    expect(await kept(page)).toHaveLength(1);
    await expectAccessible(page);
  } finally {
    revoke(null);
  }
});
