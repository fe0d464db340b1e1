import path from "node:path";
import { defineConfig } from "vitest/config";

/** Rooms whose code holds nothing between calls (`lib`) or only what it is handed (`db`): a test leaves nothing behind. */
const SHARED = ["tests/lib/**", "tests/structure/**", "tests/structure.test.ts", "tests/db/{read,write}/**"];
/** Seeded simulations and the trust cases are stages of their own in `npm test`. */
const SIMULATED = [
  "tests/calibration/**",
  "tests/lib/verdict/camera-fingerprint-calibration.test.ts",
  "tests/lib/verdict/group-jump.test.ts",
];
const TRUSTED = ["tests/trust/**"];

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
    projects: [
      project("shared", 1, SHARED, SIMULATED),
      project("apart", 2, ["tests/**"], [...SHARED, ...SIMULATED, ...TRUSTED]),
      project("calibration", 3, SIMULATED),
      project("trust", 4, TRUSTED),
    ],
  },
});
