import { existsSync } from "node:fs";
import path from "node:path";
import { defineConfig } from "playwright/test";
import { served } from "./tests/e2e/served";

const chromium = (process.env.PATH ?? "")
  .split(path.delimiter)
  .map((folder) => path.join(folder, "chromium"))
  .find((file) => existsSync(file));

export default defineConfig({
  testDir: "tests",
  // The own academy is started last: from then on a browser without a wish is shown it and no more the demo.
  projects: [
    { name: "sign-in", testMatch: "e2e/sign-in.setup.ts" },
    {
      name: "demo",
      testMatch: ["e2e/**/*.spec.ts", "trust/**/*.spec.ts"],
      testIgnore: ["e2e/own-academy.spec.ts", "e2e/people.spec.ts"],
      dependencies: ["sign-in"],
      use: { storageState: served.signedIn },
    },
    { name: "own", testMatch: "e2e/own-academy.spec.ts", dependencies: ["demo"] },
    { name: "people", testMatch: "e2e/people.spec.ts", dependencies: ["own"] },
  ],
  outputDir: ".tmp/test-results",
  workers: 1,
  fullyParallel: false,
  forbidOnly: true,
  retries: 0,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  use: {
    baseURL: served.address,
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
    command: "node tests/e2e/serve.mjs",
    url: `${served.address}/api/health`,
    env: { PORT: String(served.port), PROOFBAND_DATA: served.data },
    reuseExistingServer: false,
    timeout: 300_000,
    gracefulShutdown: { signal: "SIGTERM", timeout: 8000 },
    stdout: "pipe",
  },
});
