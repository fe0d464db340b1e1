import { mkdirSync, rmSync } from "node:fs";
import path from "node:path";
import { binary, ensureBuilt, ensureChromium, ensureInstalled, ROOT, requireNode } from "./ensure.mjs";
import { runChild, stopWithParent } from "./run-child.mjs";
import { failedOfBrowser, failedOfVitest, readResults } from "./run-results.mjs";
import { Refusal, say } from "./say.mjs";

const RESULTS = path.join(ROOT, ".tmp", "results");
const BROWSER = path.join(RESULTS, "playwright.json");

const times = [];
const count = { passed: 0, failed: 0 };
// Named once more in the end, where a long run's output is read.
const failures = [];

async function stage(key, work) {
  const from = performance.now();
  console.log(`\n${say("test.stage", { stage: say(key) })}`);
  try {
    await work();
  } finally {
    times.push(say("test.time", { stage: say(key), seconds: ((performance.now() - from) / 1000).toFixed(1) }));
  }
}

function runNode(args, env = {}) {
  return runChild(process.execPath, args, { cwd: ROOT, env: { ...process.env, ...env } });
}

// A check has no count of its own: it adds a failure, and its success adds nothing.
async function check(...commands) {
  for (const command of commands) {
    if ((await runNode(command)) === 0) continue;
    count.failed++;
    failures.push({ name: path.basename(command[0]), why: "" });
  }
}

function add(runner, passed, failed, status) {
  count.passed += passed;
  count.failed += failed.length;
  failures.push(...failed);
  // A run that breaks before or after its tests, or has none, has failed although no single test did.
  if (failed.length > 0 || (status === 0 && passed > 0)) return;
  count.failed++;
  failures.push({ name: runner, why: say("test.broke", { status }) });
}

async function runVitest(name, projects) {
  const results = path.join(RESULTS, `${name}.json`);
  const which = projects.flatMap((project) => ["--project", project]);
  const args = ["run", ...which, "--reporter=default", "--reporter=json", `--outputFile.json=${results}`];
  const status = await runNode([binary("vitest"), ...args]);
  const found = readResults(results);
  if (!found) return add(name, 0, [], status);
  // A test that is skipped or only planned holds nothing: it counts as failed, and so does a file that broke before its tests.
  add(name, found.numPassedTests, failedOfVitest(found), status);
}

async function runBrowserTests() {
  const env = { PLAYWRIGHT_JSON_OUTPUT_NAME: BROWSER };
  const status = await runNode([binary("playwright"), "test", "--reporter=list,json"], env);
  const found = readResults(BROWSER);
  if (!found) return add("playwright", 0, [], status);
  add("playwright", found.stats.expected, failedOfBrowser(found), status);
}

async function test() {
  requireNode();
  rmSync(RESULTS, { recursive: true, force: true });
  mkdirSync(RESULTS, { recursive: true });
  await stage("test.install", ensureInstalled);
  await stage("test.chromium", ensureChromium);
  await stage("test.lint", () => check([binary("biome"), "check", "."]));
  await stage("test.types", () => check([binary("next"), "typegen"], [binary("tsc"), "--noEmit"]));
  await stage("test.unit", () => runVitest("unit", ["shared", "apart"]));
  await stage("test.calibration", () => runVitest("calibration", ["calibration"]));
  await stage("test.trust", () => runVitest("trust", ["trust"]));
  await stage("test.build", ensureBuilt);
  await stage("test.browser", runBrowserTests);
}

stopWithParent();
try {
  await test();
} catch (error) {
  count.failed++;
  console.error(error instanceof Refusal ? `\n${error.message}` : error);
}
for (const { name, why } of failures)
  console.log(`\n${say("test.failed", { name: path.relative(ROOT, name) })}\n${why}`);
console.log(`\n${times.join("\n")}`);
console.log(say("test.count", count));
process.exitCode = count.failed === 0 && count.passed > 0 ? 0 : 1;
