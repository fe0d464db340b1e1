import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import path from "node:path";
import type { Page } from "playwright/test";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { builtScript } from "../built-script";
import { served } from "./served";
import { expect } from "./watched";

/** The verdict that the batch door comes to from the files that a page offers. */
export async function analyzed(page: Page): Promise<TrackVerdict> {
  const fileOf = async (name: string): Promise<string> => {
    const href = await page.getByRole("link", { name }).getAttribute("href");
    return (await page.request.get(href ?? "")).text();
  };
  const noise = path.join(served.root, ".tmp", `noise-${process.pid}.ndjson`);
  writeFileSync(noise, await fileOf("Its noise models"));
  const run = spawnSync(process.execPath, [builtScript("app/_commands/analyze.ts"), "--looks", "--noise", noise], {
    input: await fileOf("The judged track"),
    encoding: "utf8",
  });
  expect(`${run.status} ${run.stderr}`).toBe("0 ");
  expect(run.stdout).toBe(await fileOf("The verdict as data"));
  return JSON.parse(run.stdout) as TrackVerdict;
}
