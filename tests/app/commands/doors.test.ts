import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, expect, it } from "vitest";
import { builtScript } from "../../built-script";

// Other tests start commands built into one file; here each begins as people start it, and says the same.

const ROOT = path.join(import.meta.dirname, "../../..");
/** They ask npm, and need no word. */
const WITHOUT_WORDS = ["sbom", "advisories"];
const { scripts } = JSON.parse(readFileSync(path.join(ROOT, "package.json"), "utf8")) as {
  readonly scripts: Readonly<Record<string, string>>;
};
const doors = Object.entries(scripts).filter(
  ([name, line]) => line.includes("app/_commands/") && line.endsWith(".ts") && !WITHOUT_WORDS.includes(name),
);

const empty = mkdtempSync(path.join(tmpdir(), "proofband-doors-"));
afterAll(() => rmSync(empty, { recursive: true, force: true }));

function run(args: readonly string[]): Promise<{ readonly status: number | null; readonly said: string }> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, {
      ...{ cwd: ROOT, env: { ...process.env, PROOFBAND_DATA: empty }, stdio: ["ignore", "pipe", "pipe"] },
    });
    let said = "";
    for (const stream of [child.stdout, child.stderr])
      stream?.on("data", (part) => {
        said += String(part);
      });
    child.on("error", reject);
    // Meanwhile others write to the disk.
    child.on("close", (status) => resolve({ status, said: said.replace(/\d+ MB/g, "… MB") }));
  });
}

it(`each of ${doors.length} commands answers a word that it doesn't know alike, through its own line and built`, async () => {
  expect(doors.length).toBeGreaterThanOrEqual(8);
  for (const [name, line] of doors) {
    const [node, ...args] = line.split(" ");
    expect([name, node]).toEqual([name, "node"]);
    const [own, built] = await Promise.all([
      run([...args, "--nonsense"]),
      run([builtScript(args.at(-1) ?? ""), "--nonsense"]),
    ]);
    expect(own.said.trim(), name).not.toBe("");
    expect([name, own]).toEqual([name, built]);
  }
}, 180_000);
