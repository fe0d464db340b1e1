import { mkdirSync, readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { binary, ensureBuilt, ensureChromium, ensureInstalled, ROOT, requireNode } from "./ensure.mjs";
import { runChild, stopWithParent } from "./run-child.mjs";
import { Refusal, say } from "./say.mjs";

const RESULTS = path.join(ROOT, ".tmp", "results");
const BROWSER = path.join(RESULTS, "playwright.json");

const times = [];
const count = { passed: 0, failed: 0 };

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
  for (const command of commands) if ((await runNode(command)) !== 0) count.failed++;
}

function add(passed, failed, status) {
  count.passed += passed;
  // A run that breaks before or after its tests has failed although no single test did.
  count.failed += failed === 0 && (status !== 0 || passed === 0) ? 1 : failed;
}

function readResults(file) {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch {
    return undefined;
  }
}

async function runVitest(name, projects) {
  const results = path.join(RESULTS, `${name}.json`);
  const which = projects.flatMap((project) => ["--project", project]);
  const args = ["run", ...which, "--reporter=default", "--reporter=json", `--outputFile.json=${results}`];
  const status = await runNode([binary("vitest"), ...args]);
  const found = readResults(results);
  if (!found) return add(0, 0, 1);
  const broken = found.testResults.filter(
    (file) => file.status === "failed" && !file.assertionResults.some((test) => test.status === "failed"),
  );
  // A test that is skipped or only planned holds nothing: it counts as failed, and so does a file that broke before its tests.
  const failed = found.numFailedTests + found.numPendingTests + found.numTodoTests + broken.length;
  add(found.numPassedTests, failed, status);
}

async function runBrowserTests() {
  const env = { PLAYWRIGHT_JSON_OUTPUT_NAME: BROWSER };
  const status = await runNode([binary("playwright"), "test", "--reporter=list,json"], env);
  const found = readResults(BROWSER);
  if (!found) return add(0, 0, 1);
  const { expected, unexpected, flaky, skipped } = found.stats;
  add(expected, unexpected + flaky + skipped + found.errors.length, status);
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
console.log(`\n${times.join("\n")}`);
console.log(say("test.count", count));
process.exitCode = count.failed === 0 && count.passed > 0 ? 0 : 1;
