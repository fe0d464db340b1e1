import { test as setup } from "playwright/test";
import { served } from "./served";

setup("the demo is entered as the coach who owns it", async ({ page }) => {
  await page.goto("/");
  await page.getByRole("button", { name: "Look as Coach Wren" }).click();
  await page.waitForURL("**/students");
  await page.context().storageState({ path: served.signedIn });
});
