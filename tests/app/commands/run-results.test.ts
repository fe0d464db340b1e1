import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { failedOfBrowser, failedOfVitest, readResults } from "@/app/_commands/run-results.mjs";

const folder = mkdtempSync(path.join(tmpdir(), "proofband-results-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

// The runner itself is asked, so that its own form of a report is what is read.
function report(text: string): unknown {
  writeFileSync(path.join(folder, "one.test.mjs"), text);
  const file = path.join(folder, "report.json");
  const runner = path.resolve("node_modules/vitest/vitest.mjs");
  const args = ["run", "--root", folder, "--globals", "--reporter=json", `--outputFile=${file}`];
  try {
    execFileSync(process.execPath, [runner, ...args], { stdio: "ignore", env: { ...process.env, VITEST: "" } });
  } catch {
    // A run with failures ends with a status of its own.
  }
  return readResults(file);
}

describe("the closing list of a run", () => {
  test("names what failed, was skipped or only planned, with its reason, and nothing that passed", () => {
    const found = report(
      `test("holds", () => {}); test("breaks", () => expect(1).toBe(2)); test.skip("left", () => {}); test.todo("later");`,
    );
    const failed = failedOfVitest(found);
    expect(failed.map(({ name }) => name.replace(/^.* › /, ""))).toEqual(["breaks", "left", "later"]);
    expect(failed[0]?.why).toContain("expected 1 to be 2");
  });

  test("names a file that broke before its tests", () => {
    const [failed, ...others] = failedOfVitest(report(`throw new Error("no table"); test("holds", () => {});`));
    expect(others).toEqual([]);
    expect(failed?.name).toMatch(/one\.test\.mjs$/);
    expect(failed?.why).toContain("no table");
  });

  test("of the browser: what failed, passed at a second try or did not run, in suites at any depth", () => {
    const spec = (title: string, status: string, message?: string) => ({
      file: "e2e/a.spec.ts",
      line: 3,
      title,
      tests: [{ status, results: [{ errors: message ? [{ message: `\u001b[31m${message}\u001b[0m` }] : [] }] }],
    });
    const found = {
      suites: [
        { specs: [spec("fine", "expected")], suites: [{ specs: [spec("broken", "unexpected", "Timed out")] }] },
        { specs: [spec("behind it", "skipped"), spec("at last", "flaky")] },
      ],
      errors: [{ message: "the server didn't answer" }],
    };
    expect(failedOfBrowser(found)).toEqual([
      { name: "e2e/a.spec.ts:3 › broken", why: "Timed out" },
      { name: "e2e/a.spec.ts:3 › behind it", why: "skipped" },
      { name: "e2e/a.spec.ts:3 › at last", why: "flaky" },
      { name: "", why: "the server didn't answer" },
    ]);
  });

  test("a report that isn't there is none", () => {
    expect(readResults(path.join(folder, "none.json"))).toBeUndefined();
  });
});
