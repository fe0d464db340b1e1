import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import type { BrowserContext, Cookie, Page } from "playwright/test";
import { servedForOwn as served } from "./served";

// The browser of a coach who has an academy: the demo comes first only until there is one.
export const storageState = {
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
export const PASSWORD = "a bucket of range balls";

/** The cookies of a browser in which the owner has signed in. */
export const OWNER = path.join(served.root, ".tmp", "owner.json");

/** Gives a browser the owner's cookies once there are some. */
export async function comeAsOwner(context: BrowserContext): Promise<void> {
  if (!existsSync(OWNER)) return;
  const { cookies } = JSON.parse(readFileSync(OWNER, "utf8")) as { readonly cookies: Cookie[] };
  await context.addCookies(cookies);
}

export async function trySignIn(page: Page, password: string): Promise<void> {
  await page.getByLabel("E-mail address").fill("lark@range.example");
  await page.getByLabel("Password").fill(password);
  await page.getByRole("button", { name: "Sign in" }).click();
}

export async function signIn(page: Page): Promise<void> {
  await trySignIn(page, PASSWORD);
  await page.waitForURL("**/students");
}
