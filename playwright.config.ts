import { existsSync } from "node:fs";
import path from "node:path";
import { defineConfig } from "playwright/test";
import { allServed, SERVED_LOG, WORKERS } from "./tests/e2e/served";

const chromium = (process.env.PATH ?? "")
  .split(path.delimiter)
  .map((folder) => path.join(folder, "chromium"))
  .find((file) => existsSync(file));

export default defineConfig({
  testDir: "tests",
  projects: [
    { name: "e2e", testMatch: "e2e/**/*.spec.ts" },
    { name: "trust", testMatch: "trust/**/*.spec.ts", testIgnore: "trust/served-log.spec.ts" },
    { name: "log", testMatch: "trust/served-log.spec.ts", dependencies: ["e2e", "trust"] },
  ],
  outputDir: ".tmp/test-results",
  // Files run side by side, each worker on a server and data of its own; the tests of one file in their order.
  workers: WORKERS,
  fullyParallel: false,
  forbidOnly: true,
  retries: 0,
  // Two workers share two cores, and a busy machine has less.
  timeout: 120_000,
  expect: { timeout: 10_000, toHaveScreenshot: { animations: "disabled", caret: "hide", scale: "css" } },
  snapshotPathTemplate: "tests/e2e/pictures/{arg}{ext}",
  // A picture that nobody has approved is none.
  updateSnapshots: "none",
  use: {
    locale: "en-GB",
    launchOptions: {
      executablePath: chromium,
      args: [
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--disable-dev-shm-usage",
      ],
    },
  },
  webServer: {
    // What the servers write out in the whole run is read in the end, by trust/served-log.spec.ts.
    command: `mkdir -p .tmp && node tests/e2e/serve.mjs 2>&1 | tee "${SERVED_LOG}"`,
    // The server that is started last.
    url: `${allServed.at(-1)?.address}/api/health`,
    env: { PORTS: allServed.map(({ port }) => port).join(",") },
    reuseExistingServer: false,
    timeout: 300_000,
    gracefulShutdown: { signal: "SIGTERM", timeout: 8000 },
    // Two lines a refusal, and thousands of them on purpose: what the tests say would drown in it.
    stdout: "ignore",
  },
});
