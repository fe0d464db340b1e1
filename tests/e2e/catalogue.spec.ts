import { expectToHold } from "./hold-at";
import { served } from "./served";
import { alert, expect, expectAccessible, test } from "./watched";

const WIDTHS = [320, 390, 768, 1440];
const PAGES = [
  ...["/drills/library", "/drills/d03/change", "/settings/fundamentals", "/settings/fundamentals/own-lead-heel"],
];

test("the pages of drills and of what is measured hold at 320 to 1440 px and can be read by everyone", async ({
  page,
}) => {
  await expectToHold(page, PAGES, WIDTHS);
});

test("a drill joins the library, is described anew with a reason, and is offered no more, without scripts", async ({
  browser,
}) => {
  const context = await browser.newContext({ javaScriptEnabled: false, baseURL: served.address });
  const page = await context.newPage();
  await page.goto("/drills/library");
  await page.getByRole("textbox", { name: "Name", exact: true }).fill("wall at the HIP");
  await page.getByLabel("How it goes").fill("Two tees, through the middle.");
  await page.getByRole("button", { name: "Add the drill" }).click();
  await expect(alert(page)).toContainText("one thing needs mending");
  await expect(page.getByText("Another drill has that name.").first()).toBeVisible();
  await page.getByRole("textbox", { name: "Name", exact: true }).fill("Tee gate");
  await page.getByRole("button", { name: "Add the drill" }).click();
  await page.getByRole("link", { name: "Tee gate" }).click();
  await expect(page.getByRole("heading", { name: "It has not changed" })).toBeVisible();
  await page.getByRole("button", { name: "Keep the change" }).click();
  await expect(page.getByText("This is needed. Fill it in.").first()).toBeVisible();
  await page.getByLabel("How it goes").fill("Two tees, through the middle, slowly.");
  await page.getByLabel("Offer it no more").check();
  await page.getByLabel("Reason").fill("Too fast to look");
  await page.getByRole("button", { name: "Keep the change" }).click();
  await expect(page.getByRole("heading", { name: "Changed once" })).toBeVisible();
  for (const said of ["Two tees, through the middle.", "Too fast to look", "Coach Wren"])
    await expect(page.getByRole("table")).toContainText(said);
  await page.goto("/students/s01/drills/new");
  await expect(page.getByRole("option", { name: "Wall at the hip" })).toHaveCount(1);
  await expect(page.getByRole("option", { name: "Tee gate" })).toHaveCount(0);
  await context.close();
});

test("a fundamental of its own is defined, put right before the first reading, and read no more", async ({ page }) => {
  await page.goto("/settings/fundamentals");
  await page.getByRole("textbox", { name: "Name", exact: true }).fill("Elbow gap, top");
  await page.getByLabel("How it is read off the still").fill("Between the two elbows, against the stance.");
  await page.getByLabel("Plus means").fill("wider");
  await page.getByLabel("Unit").selectOption({ label: "% of stance width" });
  await page.getByLabel("Error of one reading, ±").fill("4");
  await page.getByLabel("Camera figures").selectOption({ label: "as Hip sway, top (% of stance, face-on)" });
  await page.getByLabel("Goal band from").fill("90");
  await page.getByLabel("Goal band to").fill("70");
  await page.getByLabel("Plausible from").fill("0");
  await page.getByLabel("Plausible to").fill("200");
  await page.getByRole("button", { name: "Define it" }).click();
  await expect(alert(page)).toContainText("one thing needs mending");
  await expectAccessible(page);
  await page.getByLabel("Goal band from").fill("60");
  await page.getByRole("button", { name: "Define it" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Elbow gap, top: how it is defined");
  await expect(page.getByText("Nothing was read of it yet")).toHaveCount(2);
  await page.goto("/settings/goals?fundamental=own-elbow-gap-top&club=driver");
  await expect(page.getByRole("heading", { level: 1 })).toContainText("60 to 70");

  await page.goto("/settings/fundamentals/own-elbow-gap-top");
  await page.getByLabel("Error of one reading, ±").fill("6");
  await page.getByLabel("Read it no more").check();
  await page.getByLabel("Reason").fill("Only to try it");
  await page.getByRole("button", { name: "Keep the change" }).click();
  await expect(page.getByRole("table")).toContainText("no film: nothing was read by it");
  await page.goto("/settings/goals");
  await expect(page.getByRole("link", { name: "Elbow gap, top" })).toHaveCount(0);
});
