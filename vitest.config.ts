import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { defineConfig } from "vitest/config";

/** Trust cases have a process each in any case. */
const TRUSTED = ["tests/trust/**"];
/** What puts something in the place of the clock, a module or a global. */
const REPLACES = /\bvi\.(mock|doMock|stubGlobal|stubEnv|useFakeTimers|setSystemTime|spyOn|resetModules)\(/;
/** What starts threads that write, or closes their gate: it may go on when the test has its answer. */
const GOES_ON = /write-jobs|write-gate|import-door|import-worker|analysis-worker/;
/** Such files have a process of their own; all others share one, so that the house is loaded once and not with each. */
const APART = readdirSync(path.resolve(import.meta.dirname, "tests"), { recursive: true, encoding: "utf8" })
  .map((name) => `tests/${name}`)
  .filter((name) => /^tests\/(?!trust\/|structure\/).*\.test\.ts$/.test(name))
  .filter((name) => {
    const text = readFileSync(path.resolve(import.meta.dirname, name), "utf8");
    return REPLACES.test(text) || GOES_ON.test(text);
  });
/** Seeded simulations and the trust cases are stages of their own in `npm test`. */
const SIMULATED = [
  "tests/calibration/**",
  "tests/lib/verdict/camera-fingerprint-calibration.test.ts",
  "tests/lib/verdict/group-jump.test.ts",
];

const tests = (folders: readonly string[]): string[] => folders.map((each) => each.replace(/\*\*$/, "**/*.test.ts"));

/** Projects run one after another, so that a process is kept for all the files of a project that shares. */
const project = (name: string, order: number, include: readonly string[], exclude: readonly string[] = []) => ({
  extends: true as const,
  test: {
    name,
    include: tests(include),
    exclude: ["tests/e2e/**", ...exclude],
    isolate: name !== "shared",
    sequence: { groupOrder: order },
  },
});

export default defineConfig({
  resolve: { alias: { "@": path.resolve(import.meta.dirname) } },
  test: {
    environment: "node",
    pool: "forks",
    maxWorkers: 2,
    testTimeout: 60_000,
    // Beginning an academy takes a second, and beside other work on the same cores many.
    hookTimeout: 60_000,
    // What is waited for comes; beside other work on the same cores it comes later than in the one second of the library.
    expect: { poll: { timeout: 30_000, interval: 20 } },
    projects: [
      project("shared", 1, ["tests/**"], [...APART, ...SIMULATED, ...TRUSTED]),
      project("apart", 2, APART),
      project("calibration", 3, SIMULATED),
      project("trust", 4, TRUSTED),
    ],
  },
});
