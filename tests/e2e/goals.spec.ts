import { addStudent } from "./add-student";
import { expectToHold } from "./hold-at";
import { served } from "./served";
import { alert, expect, expectAccessible, test } from "./watched";

const WIDTHS = [320, 390, 768, 1440];
const PAGES = ["/students/s08/goals?fundamental=posture-bend&club=driver", "/settings/goals", "/settings/owning"];

test("the pages of goals and of the owning rule hold at 320 to 1440 px and can be read by everyone", async ({
  page,
}) => {
  await expectToHold(page, PAGES, WIDTHS);
});

test("a student’s band is refused in words, set, and given back; each stays in the history, without scripts", async ({
  browser,
  page: scripted,
}) => {
  const student = await addStudent(scripted, "Goldcrest");
  const context = await browser.newContext({ javaScriptEnabled: false, baseURL: served.address });
  const page = await context.newPage();
  await page.goto(`${student}/goals?fundamental=hinge&club=iron`);
  await expect(page.getByRole("heading", { level: 1 })).toContainText("the goal is 85 to 95");
  await page.getByLabel("Lower edge").fill("97");
  await page.getByRole("button", { name: "Set this band" }).click();
  await expect(alert(page)).toContainText("2 things to put right");
  await expect(page.getByText("The upper edge is not above the lower one.").first()).toBeVisible();
  await expect(page.getByLabel("Lower edge")).toHaveValue("97");
  await page.getByLabel("Lower edge").fill("80");
  await page.getByLabel("Reason").fill("Long arms, agreed with her");
  await page.getByLabel("First day", { exact: true }).fill("2026-09-01");
  await page.getByRole("button", { name: "Set this band" }).click();
  await expect(alert(page)).toContainText("one thing to put right");
  await page.getByLabel("I know: it is drawn from that day").check();
  await page.getByRole("button", { name: "Set this band" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("the goal is 80 to 95");
  await expect(page.getByRole("heading", { name: "The student’s own band holds" })).toBeVisible();
  await page.getByLabel("No band of the student’s own any more").check();
  await page.getByLabel("Reason").fill("Grown");
  await page.getByRole("button", { name: "Set this band" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("the goal is 85 to 95");
  const history = page.getByRole("table");
  for (const said of ["given back to the wider band", "Grown", "Long arms, agreed with her", "Coach Wren"])
    await expect(history).toContainText(said);
  await context.close();
});

test("the address of a fundamental’s goal leads to it, and the page of the fundamental too", async ({ page }) => {
  await page.goto("/students/s08/posture-bend/goal?club=driver");
  await expect(page.getByText("Stands taller by choice; agreed with her on 20 April.")).toBeVisible();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("22 to 38");
  await page.goto("/students/s08/posture-bend?club=driver");
  await page.getByRole("link", { name: "Change the goal band" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("22 to 38");
});

test("a director plans a band for an age and an owning rule; both stand in the lists and change nothing yet", async ({
  page,
}) => {
  await page.goto("/settings/goals?fundamental=shoulder-line&club=hybrid");
  await page.getByLabel("Those of an age").check();
  await page.getByLabel("Age from, years").fill("9");
  await page.getByLabel("Age to, years").fill("12");
  await page.getByLabel("Lower edge").fill("-6");
  await page.getByLabel("First day", { exact: true }).fill("2027-01-01");
  await page.getByLabel("Reason").fill("Shorter arms");
  await page.getByRole("button", { name: "Set this band" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("−4 to 4");
  await expect(page.getByRole("table").first()).toContainText("Age 9 to 12");
  await expectAccessible(page);

  await page.goto("/settings/owning");
  await page.getByLabel("Films in a row").fill("41");
  await page.getByRole("button", { name: "Set this rule" }).click();
  await expect(alert(page)).toContainText("2 things to put right");
  await expectAccessible(page);
  await page.getByLabel("Films in a row").fill("4");
  await page.getByLabel("First day", { exact: true }).fill("2027-02-01");
  await page.getByLabel("Reason").fill("A longer look");
  await page.getByRole("button", { name: "Set this rule" }).click();
  await expect(page.getByText("From Mon 1 Feb 2027 on: The last 4 films")).toBeVisible();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(
    "A fundamental is owned when the built-in rule holds",
  );
});

test("the season says what is owned, what owned means, and never that it slipped by a sign alone", async ({ page }) => {
  await page.goto("/students/s01");
  const keep = page.getByRole("region", { name: "To keep" });
  await expect(keep).toContainText("Owned since");
  await expect(keep).toContainText("Owned here means: The last 3 films");
  expect(await keep.textContent()).not.toMatch(/slip(?!s? is proved)/i);
});
