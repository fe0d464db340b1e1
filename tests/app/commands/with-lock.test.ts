import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { withLock } from "@/app/_commands/with-lock.mjs";

const FILE = path.resolve("app/_commands/with-lock.mjs");
let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), "proofband-lock-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const lock = () => path.join(folder, "deep", "lock");
const quiet = () => undefined;

it("four processes that work under one lock never work at once", async () => {
  const log = path.join(folder, "log");
  const program = `
    import { appendFileSync } from "node:fs";
    import { withLock } from ${JSON.stringify(FILE)};
    await withLock(${JSON.stringify(lock())}, async () => {
      appendFileSync(${JSON.stringify(log)}, "in ");
      await new Promise((done) => setTimeout(done, 150));
      appendFileSync(${JSON.stringify(log)}, "out ");
    }, () => {});`;
  const ended = Array.from({ length: 4 }, () => {
    const child = spawn(process.execPath, ["--input-type=module", "--eval", program], { stdio: "inherit" });
    return new Promise((resolve) => child.on("exit", resolve));
  });
  expect(await Promise.all(ended)).toEqual([0, 0, 0, 0]);
  expect(readFileSync(log, "utf8")).toBe("in out ".repeat(4));
  expect(existsSync(lock())).toBe(false);
});

it("takes over what a process that is gone has left, and waits for one that is there", async () => {
  const { pid: gone } = spawnSync(process.execPath, ["--version"]);
  mkdirSync(lock(), { recursive: true });
  writeFileSync(path.join(lock(), "pid"), String(gone));
  expect(await withLock(lock(), async () => "done", quiet)).toBe("done");

  mkdirSync(lock(), { recursive: true });
  writeFileSync(path.join(lock(), "pid"), String(process.pid));
  let waits = 0;
  const after = withLock(
    lock(),
    async () => existsSync(path.join(lock(), "pid")),
    () => {
      waits += 1;
    },
  );
  await new Promise((resolve) => setTimeout(resolve, 500));
  expect(waits).toBe(1);
  rmSync(lock(), { recursive: true });
  expect(await after).toBe(true);
});

it("gives the lock back where the work fails", async () => {
  const fail = async () => {
    throw new Error("no room");
  };
  await expect(withLock(lock(), fail, quiet)).rejects.toThrow("no room");
  expect(existsSync(lock())).toBe(false);
});
