import { mkdirSync, rmSync } from "node:fs";
import path from "node:path";
import { buildSync } from "esbuild";

/** Tests and the scripts that they start run in the project's folder. */
const ROOT = process.cwd();
const FOLDER = path.join(ROOT, ".tmp", "scripts", String(process.pid));
const known = new Map<string, string>();

/**
 * A script of the project as one file of JavaScript, for tests that start it many times: it begins in half a second of
 * computing, and through `tsx`, as its command does, in more than twice that. `tests/app/commands/doors.test.ts` starts each
 * command as people do.
 */
export function builtScript(file: string): string {
  const entry = path.resolve(ROOT, file);
  const built = known.get(entry);
  if (built !== undefined) return built;
  if (known.size === 0) {
    mkdirSync(FOLDER, { recursive: true });
    process.once("exit", () => rmSync(FOLDER, { recursive: true, force: true }));
  }
  const outfile = path.join(FOLDER, `${known.size}-${path.basename(entry).replace(/\.ts$/, ".cjs")}`);
  buildSync({
    ...{ entryPoints: [entry], outfile, absWorkingDir: ROOT, tsconfig: path.join(ROOT, "tsconfig.json") },
    ...{ bundle: true, platform: "node", format: "cjs", target: "node20", packages: "external", logLevel: "error" },
  });
  known.set(entry, outfile);
  return outfile;
}
