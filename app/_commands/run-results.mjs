import { readFileSync } from "node:fs";

/** Lines of a failure's message that the closing list repeats: enough to know it by, the rest stands where it happened. */
const LINES = 6;
// biome-ignore lint/suspicious/noControlCharactersInRegex: a terminal's colours begin with one.
const COLOURS = /\u001b\[[0-9;]*m/g;

function shortened(message) {
  return message.replace(COLOURS, "").split("\n").slice(0, LINES).join("\n");
}

/** What a runner wrote to `file`; undefined if it wrote nothing that can be read. */
export function readResults(file) {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch {
    return undefined;
  }
}

/** @typedef {{ name: string, why: string }} NotPassed */

/**
 * Each failed, skipped or planned test and each file that broke before its tests, in the order of the run.
 * @param {any} found its report.
 * @returns {NotPassed[]}
 */
export function failedOfVitest(found) {
  return found.testResults.flatMap((file) => {
    const failed = file.assertionResults.filter((test) => test.status !== "passed");
    const broken = file.status === "failed" && !file.assertionResults.some((test) => test.status === "failed");
    return [
      ...(broken ? [{ name: file.name, why: shortened(file.message ?? "") }] : []),
      ...failed.map((test) => ({
        name: `${file.name} › ${test.fullName}`,
        why: shortened(test.failureMessages?.[0] ?? test.status),
      })),
    ];
  });
}

function specsWithin(suite) {
  return [...(suite.specs ?? []), ...(suite.suites ?? []).flatMap(specsWithin)];
}

/**
 * The same of the browser's runner: tests that failed, passed only in the end or did not run, and errors outside of any test.
 * @param {any} found its report.
 * @returns {NotPassed[]}
 */
export function failedOfBrowser(found) {
  const failed = found.suites.flatMap(specsWithin).flatMap((spec) =>
    spec.tests
      .filter((test) => test.status !== "expected")
      .map((test) => ({
        name: `${spec.file}:${spec.line} › ${spec.title}`,
        why: shortened(test.results.flatMap((result) => result.errors)[0]?.message ?? test.status),
      })),
  );
  return [...failed, ...found.errors.map((error) => ({ name: "", why: shortened(error.message ?? "") }))];
}
