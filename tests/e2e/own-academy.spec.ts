import path from "node:path";
import { served } from "./served";
import { alert, expect, expectAccessible, test } from "./watched";

// The browser of a coach who has an academy: the demo comes first only until there is one.
const storageState = {
  cookies: [
    {
      name: "proofband-academy",
      value: "own",
      domain: "127.0.0.1",
      path: "/",
      expires: -1,
      httpOnly: true,
      secure: false,
      sameSite: "Lax" as const,
    },
  ],
  origins: [],
};
test.use({ storageState });

test.describe
  .serial("a coach's own academy, from nothing", () => {
    test("start it, add a student and a session, see the first page; what is refused keeps what was typed", async ({
      page,
    }) => {
      await page.goto("/students");
      await page.getByRole("link", { name: "Start my own academy" }).click();
      await page.getByRole("button", { name: "Start it" }).click();
      await expect(alert(page)).toContainText("Nothing was saved yet");
      await page.getByLabel("Name of the academy").fill("North Range");
      await page.getByLabel("Your name").fill("Coach Lark");
      await page.getByRole("button", { name: "Start it" }).click();
      await expect(page.getByRole("heading", { level: 1 })).toHaveText("Four steps to the first page");
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
      await page.getByRole("button", { name: "Save the session" }).click();
      await expect(alert(page)).toContainText("“8o” is not a number");
      await expectAccessible(page);
      for (const [swing, value] of ["88", "91", "86"].entries())
        await page.getByLabel(`Wrist hinge, swing ${swing + 1}`, { exact: true }).fill(value);
      await page.getByRole("button", { name: "Save the session" }).click();
      await expect(page.getByRole("heading", { level: 1 })).toContainText("Nia");
      await expect(page.getByText("One film so far.")).toBeVisible();
      await page.getByRole("link", { name: "Wrist hinge" }).first().click();
      await expect(page.getByText(/one session counts so far, and the first look at a change takes 4/)).toBeVisible();
      await expectAccessible(page);
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
      await page.getByRole("button", { name: "Import 40 rows" }).click();
      await expect(page.getByRole("heading", { level: 1 })).toHaveText("120 readings are saved");
      await expectAccessible(page);
      await page.goto("/import");
      await page.locator("input[type=file]").setInputFiles(sample);
      await page.getByRole("button", { name: "Read the file" }).click();
      await page.getByRole("button", { name: "Import 40 rows" }).click();
      await expect(page.getByRole("heading", { level: 1 })).toHaveText(
        "This file was imported before; nothing changed",
      );
    });

    test("a deliberately bad file names row, column, value and the mend; an upload of something else is refused", async ({
      page,
    }) => {
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
      const context = await browser.newContext({ javaScriptEnabled: false, baseURL: served.address, storageState });
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
      await expect(page.getByText("Demo academy.")).toBeVisible();
      await expect(page.getByRole("link", { name: "Tove" })).toHaveCount(0);
      await page.goto("/settings");
      await page.getByRole("button", { name: "Back to my academy" }).click();
      await expect(page.getByRole("link", { name: "Tove" }).first()).toBeVisible();
    });
  });
