import type { Page } from "playwright/test";

/** Adds a student to the academy that the page shows. @returns the way of the student's page */
export async function addStudent(page: Page, alias: string): Promise<string> {
  await page.goto("/students/new");
  await page.getByLabel("Alias or first name").fill(alias);
  await page.getByLabel("right-handed").check();
  await page.getByLabel("Given by").fill("mother");
  await page.getByLabel("I hold this consent on paper.").check();
  await page.getByRole("button", { name: "Add the student" }).click();
  await page.waitForURL(/\/students\/[0-9a-f-]{36}$/);
  return new URL(page.url()).pathname;
}
