import { rmSync } from "node:fs";
import path from "node:path";
import { openDetails } from "./open-details";
import { comeAsOwner, OWNER, PASSWORD, signIn, storageState, trySignIn } from "./owner";
import { servedForOwn as served } from "./served";
import { alert, expect, expectAccessible, test } from "./watched";

test.use({ storageState, baseURL: served.address });

test.beforeAll(() => rmSync(OWNER, { force: true }));
test.beforeEach(({ context }) => comeAsOwner(context));

test.describe
  .serial("a coach's own academy, from nothing", () => {
    test("start it, add a student and a session, see the first page; what is refused keeps what was typed", async ({
      page,
      watch,
    }) => {
      await page.goto("/students");
      await page.getByRole("link", { name: "Start my own academy" }).click();
      await expectAccessible(page);
      await page.getByRole("button", { name: "Start it" }).click();
      watch.provoked.push(/status of 4\d\d/);
      await expect(alert(page)).toContainText("Nothing was saved yet");
      await page.getByLabel("Name of the academy").fill("North Range");
      await page.getByLabel("Your name").fill("Coach Lark");
      await page.getByLabel("Your e-mail address").fill("lark@range.example");
      await page.getByLabel("A password").fill("password1234567");
      await page.getByRole("button", { name: "Start it" }).click();
      await expect(page.getByText("Many people use this one")).toBeVisible();
      await expectAccessible(page);
      await expect(page.getByLabel("Name of the academy")).toHaveValue("North Range");
      await page.getByLabel("A password").fill(PASSWORD);
      await page.getByRole("button", { name: "Start it" }).click();
      await expect(page.getByText("Your account is there.")).toBeVisible();
      await expectAccessible(page);
      await trySignIn(page, "not this one at all");
      await expect(alert(page)).toContainText("don’t go together");
      await signIn(page);
      await page.context().storageState({ path: OWNER });
      await expect(page.getByRole("heading", { level: 1 })).toHaveText("Four steps to the first page");
      // Before the first session the groups are laid out freely: moved, refused, and put back.
      await page.goto("/settings/clubs");
      await page.getByRole("link", { name: "Arrange the groups" }).click();
      await page.getByLabel("Clubs").first().fill("wedges");
      await page.getByRole("button", { name: "Keep these groups" }).click();
      await expect(alert(page)).toContainText("In no group yet: 9i. Add them to one.");
      await expect(page.getByLabel("Clubs").first()).toHaveValue("wedges");
      await expectAccessible(page);
      await page.getByLabel("Clubs").first().fill("wedges, 9-iron");
      await page.getByLabel("Name").nth(2).fill("Rescues");
      await page.getByRole("button", { name: "Keep these groups" }).click();
      await expect(page.getByRole("table").first()).toContainText("Rescues");
      await page.goto("/students");
      await expect(page.getByText("Demo academy.")).toHaveCount(0);
      await expectAccessible(page);
      await page.getByRole("link", { name: "A student", exact: true }).click();
      await page.getByLabel("Alias or first name").fill("Nia");
      await page.getByRole("button", { name: "Add the student" }).click();
      await expect(alert(page)).toContainText("Nothing was saved yet");
      await expect(page.getByLabel("Alias or first name")).toHaveValue("Nia");
      await expectAccessible(page);
      await page.getByLabel("right-handed").check();
      await page.getByLabel("Given by").fill("mother");
      await page.getByLabel("I hold this consent on paper.").check();
      await page.getByRole("button", { name: "Add the student" }).click();
      await expect(page.getByRole("heading", { level: 1 })).toHaveText("Nia: no film yet");
      await expectAccessible(page);
      await page.getByRole("link", { name: "Add a session" }).click();
      await page.getByLabel("Wrist hinge, swing 1", { exact: true }).fill("8o");
      const lean = "Stick from the ball at the phone: lean, degrees";
      await (await openDetails(page, "What you saw", page.getByLabel(lean))).fill("23");
      await page.getByLabel("Its near end lies to the").first().selectOption("left");
      await page.getByLabel("Lens above the ground, cm").first().fill("1.1");
      // The panel answers while the form is typed into.
      await expect(page.getByText("“1.1” looks like metres. Write 110 for 1.1 m.")).toBeVisible();
      await page.getByRole("button", { name: "Save the session" }).click();
      await expect(alert(page)).toContainText("“8o” is not a number");
      await expect(alert(page)).toContainText("“1.1” looks like metres");
      await expectAccessible(page);
      await page.getByLabel("Lens above the ground, cm").first().fill("110");
      await page.getByLabel("Phone to student, cm").first().fill("300");
      await expect(
        page.getByText(/The phone stood \d+° .* too far to the (left|right), as you stand behind it/),
      ).toBeVisible();
      await page.getByText("Each fundamental of the film face-on").click();
      await expect(page.getByRole("row", { name: /^Side tilt, setup/ }).first()).toContainText("are taken off");
      for (const [swing, value] of ["88", "91", "86"].entries())
        await page.getByLabel(`Wrist hinge, swing ${swing + 1}`, { exact: true }).fill(value);
      await page.getByLabel("Side tilt, setup, swing 1", { exact: true }).fill("12.4");
      await page.getByRole("button", { name: "Save the session" }).click();
      await expect(page.getByRole("heading", { level: 1 })).toContainText("Saved: Nia");
      await expect(page.getByText(/The first film of it here/).first()).toBeVisible();
      await page.getByRole("link", { name: "The season of Nia" }).click();
      await expect(page.getByRole("heading", { name: /^One film more, on another day/ })).toBeVisible();
      await page.getByRole("link", { name: "Wrist hinge" }).first().click();
      await expect(page.getByRole("heading", { level: 1 })).toContainText("Wrist hinge");
      await expect(page.getByText(/one session counts so far, and the first look at a change takes 4/)).toBeVisible();
      await expectAccessible(page);
      await page.goBack();
      await expect(page.getByRole("heading", { name: /^One film more, on another day/ })).toBeVisible();
      await page.getByRole("link", { name: "Side tilt, setup" }).first().click();
      await expect(
        page.getByText(/On one film the phone’s place was looked at and what it did was taken off/),
      ).toBeVisible();
    });

    test("club groups: a session's club must be of its group; a split and a merge stay on record; by keyboard alone", async ({
      page,
    }) => {
      await page.goto("/students");
      await page.getByRole("link", { name: "Nia", exact: true }).first().click();
      await page.getByRole("link", { name: "Add a session" }).click();
      await page.getByLabel("Club", { exact: true }).fill("driver");
      await page.getByText(/^The rest, /).click();
      await page.getByLabel("Wrist hinge, swing 1", { exact: true }).fill("84");
      await page.getByRole("button", { name: "Save the session" }).click();
      await expect(alert(page)).toContainText("“driver” is of the group “driver”. Choose it, or correct the club.");
      await page.goto("/settings");
      await page.getByRole("link", { name: "Open the club groups" }).press("Enter");
      await expect(page.getByRole("heading", { level: 2 }).first()).toHaveText("5 groups, one session");
      await page.getByRole("link", { name: "Split irons" }).press("Enter");
      await page.getByRole("button", { name: "Split the group" }).press("Enter");
      await expect(alert(page)).toContainText("Nothing was changed yet");
      await expectAccessible(page);
      await page.getByLabel("Name of the second group").fill("Long irons");
      await page.getByLabel("4-iron").press("Space");
      await page.getByLabel("3-iron").press("Space");
      await page.getByLabel("Name of the first group").fill("Middle irons");
      await page.getByLabel("Why").fill("long ones behave like hybrids");
      await page.getByLabel("Why").press("Enter");
      await expect(page.getByRole("heading", { level: 2 }).first()).toHaveText("6 groups, one session");
      await expect(page.getByRole("table").last()).toContainText("irons split into Middle irons, Long irons");
      await expectAccessible(page);
      await page.getByRole("link", { name: "Merge two groups" }).press("Enter");
      await page.getByLabel("First group", { exact: true }).selectOption({ label: "Middle irons" });
      await page.getByLabel("Second group", { exact: true }).selectOption({ label: "Long irons" });
      await page.getByLabel("Name", { exact: true }).fill("All irons");
      await page.getByLabel("Why").fill("too few films for two");
      await expectAccessible(page);
      await page.getByRole("button", { name: "Merge the groups" }).press("Enter");
      await expect(page.getByRole("heading", { level: 2 }).first()).toHaveText("5 groups, one session");
      await page.goto("/students");
      await page.getByRole("link", { name: "Nia", exact: true }).first().click();
      await page.getByRole("link", { name: "Wrist hinge" }).first().click();
      await expect(page.getByText(/With All irons/)).toBeVisible();
    });

    test("new clubs are an event of their day, drawn on the chart", async ({ page }) => {
      await page.goto("/students");
      await page.getByRole("link", { name: "Nia", exact: true }).first().click();
      await page.getByRole("link", { name: "Record an event" }).press("Enter");
      await page.getByLabel("Day", { exact: true }).fill("3000-01-01");
      await page.getByLabel("Note").fill("New irons, an inch longer.");
      await page.getByRole("button", { name: "Record the event" }).press("Enter");
      await expect(alert(page)).toContainText("The date is after today");
      await expect(page.getByLabel("Note")).toHaveValue("New irons, an inch longer.");
      await expectAccessible(page);
      await page.getByLabel("Day", { exact: true }).fill(new Date().toISOString().slice(0, 10));
      await page.getByRole("button", { name: "Record the event" }).press("Enter");
      await expect(page).toHaveURL(/\/events\/(?!new)[^/]+$/);
      await page.goto(page.url().replace(/\/events\/.*/, ""));
      await page.getByRole("link", { name: "Wrist hinge" }).first().click();
      await expect(page.locator("svg").getByText("new clubs").first()).toBeAttached();
    });

    test("import a file: preview, answers, confirm; the same file again changes nothing", async ({ page }) => {
      const sample = path.join(served.root, "seed", "samples", "season-wide.csv");
      await page.goto("/import");
      await page.getByRole("button", { name: "Read the file" }).click();
      await expect(alert(page)).toContainText("No file came along");
      await page.locator("input[type=file]").setInputFiles(sample);
      await page.getByRole("button", { name: "Read the file" }).click();
      await expect(page.getByText("Nothing is saved yet.")).toBeVisible();
      await expectAccessible(page);
      await page.getByLabel("A new student, left-handed").check();
      await page
        .getByLabel(/given by/i)
        .first()
        .fill("herself");
      await page.getByRole("button", { name: "Keep these answers" }).click();
      // Asked once a source; the second time it is remembered.
      await page.getByLabel(/^Away from the target/).check();
      await page.getByRole("button", { name: "Import 40 rows" }).click();
      await expect(page.getByRole("heading", { level: 1 })).toHaveText("120 readings are saved");
      await expectAccessible(page);
      await page.goto("/import");
      await page.locator("input[type=file]").setInputFiles(sample);
      await page.getByRole("button", { name: "Read the file" }).click();
      await expect(page.getByText(/^Read as last time, on /)).toBeVisible();
      await page.getByRole("button", { name: "Import 40 rows" }).click();
      await expect(page.getByRole("heading", { level: 1 })).toHaveText(
        "This file was imported before; nothing changed",
      );
    });

    test("a deliberately bad file names row, column, value and the mend; an upload of something else is refused", async ({
      page,
      watch,
    }) => {
      watch.provoked.push(/status of 422/);
      await page.goto("/import");
      await page
        .locator("input[type=file]")
        .setInputFiles(path.join(served.root, "seed", "samples", "deliberately-bad.csv"));
      await page.getByRole("button", { name: "Read the file" }).click();
      await expect(page.getByText(/Row 28, value: “NaN”/)).toBeVisible();
      const rest = await page.request.get(`${page.url().replace("/import/", "/api/import/")}/rest`);
      expect(await rest.text()).toContain("reason");
      await page.goto("/import");
      await page.locator("input[type=file]").setInputFiles({
        name: "x.csv",
        mimeType: "text/csv",
        buffer: Buffer.alloc(0),
      });
      await page.getByRole("button", { name: "Read the file" }).click();
      await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
      await expect(page.getByText(/empty/i).first()).toBeVisible();
    });

    test("without scripts: a file is uploaded, answered and imported by plain forms", async ({ browser }) => {
      const context = await browser.newContext({
        javaScriptEnabled: false,
        baseURL: served.address,
        storageState: OWNER,
      });
      const plain = await context.newPage();
      await plain.goto("/import");
      await plain
        .locator("input[type=file]")
        .setInputFiles(path.join(served.root, "seed", "samples", "season-long.csv"));
      await plain.getByRole("button", { name: "Read the file" }).click();
      await plain.getByRole("button", { name: /^Import 90 rows/ }).click();
      await expect(plain.getByRole("heading", { level: 1 })).toHaveText("90 readings are saved");
      await plain.goto("/students");
      await expect(plain.getByRole("link", { name: "Nia" }).first()).toBeVisible();
      await context.close();
    });

    test("the demo is one press away and the own academy another; nothing crosses", async ({ page }) => {
      await page.goto("/settings");
      await page.getByRole("button", { name: "See the demo" }).click();
      await page.getByRole("button", { name: "Look as Coach Wren" }).click();
      await expect(page.getByText("Demo academy.")).toBeVisible();
      await expect(page.getByRole("link", { name: "Tove" })).toHaveCount(0);
      await page.goto("/settings");
      await page.getByRole("button", { name: "Back to my academy" }).click();
      await expect(page.getByRole("link", { name: "Tove" }).first()).toBeVisible();
    });
  });
