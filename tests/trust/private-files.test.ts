import { spawnSync } from "node:child_process";
import { lstatSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabases } from "@/app/_server/database";
import { startAcademy } from "../app/server/own-academy-data";
import { countCases } from "./count-cases";
import { viewerOfAri } from "./own-academy";

// P8: what the commands write under a shell that shuts nothing. The server's own files: tests/trust/behind-tls.spec.ts.

const P8 = countCases("P8: files and folders that commands made", 10);
let home = "";
let data = "";
let remove = () => {};

beforeAll(async () => {
  const academy = await startAcademy();
  data = academy.folder;
  remove = academy.remove;
  await viewerOfAri();
  closeDatabases();
  home = mkdtempSync(path.join(tmpdir(), "proofband-files-"));
});
afterAll(() => {
  remove();
  rmSync(home, { recursive: true, force: true });
});

/** Runs a command with the shell's mask at 000; what it said. */
function run(folder: string, command: string, ...args: string[]): string {
  const entry = ["--import", "tsx", path.join("app", "_commands", `${command}.ts`), ...args];
  const { status, stdout, stderr } = spawnSync("sh", ["-c", 'umask 000; exec "$0" "$@"', process.execPath, ...entry], {
    env: { ...process.env, PROOFBAND_DATA: folder },
    encoding: "utf8",
  });
  expect([command, status, stderr]).toEqual([command, 0, ""]);
  return stdout;
}

/** Files and folders that others than their owner may open. */
function open(folder: string): string[] {
  return (readdirSync(folder, { recursive: true }) as string[]).flatMap((name) => {
    P8.add();
    const { mode } = lstatSync(path.join(folder, name));
    return (mode & 0o077) === 0 ? [] : [`${name} ${(mode & 0o777).toString(8)}`];
  });
}

it("a copy, its digests, a restored academy, an archive, an import and what lies beside them are their owner's alone", () => {
  const file = path.join(home, "ari.csv");
  writeFileSync(file, "student,date,club,swing,fundamental,value,unit\nAri,2026-05-01,7-iron,1,hinge,60,deg\n", {
    mode: 0o600,
  });
  run(data, "import", file, "--confirm");
  run(data, "backup", path.join(home, "copies", "monday.db"));
  run(data, "export", "--out", path.join(home, "all.zip"));
  run(path.join(home, "restored"), "restore", path.join(home, "copies", "monday.db"));
  run(path.join(home, "restored"), "restore", "--replace", path.join(home, "copies", "monday.db"));
  expect(open(data)).toEqual([]);
  expect(open(home)).toEqual([]);
  expect(lstatSync(path.join(home, "restored")).mode & 0o777).toBe(0o700);
}, 120_000);
