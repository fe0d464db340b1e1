import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { findHolder, lockFileOf, takeLock } from "@/app/_server/door/server-lock";
import { builtScript } from "../built-script";

// D7: one server a data folder.

let folder = "";
let started: ChildProcess[] = [];

beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), "proofband-"));
  started = [];
});

afterEach(() => {
  for (const child of started) child.kill("SIGKILL");
  rmSync(folder, { recursive: true, force: true });
});

type Told = { readonly kind: "taken" } | { readonly kind: "held"; readonly holder: { readonly pid: number } };

function startHolder(port: number): Promise<{ readonly child: ChildProcess; readonly told: Told }> {
  const child = spawn(process.execPath, [builtScript("tests/trust/lock-holder.ts"), folder, String(port)]);
  started.push(child);
  return new Promise((resolve, reject) => {
    child.stdout?.once("data", (line) => resolve({ child, told: JSON.parse(String(line)) }));
    child.stderr?.once("data", (line) => reject(new Error(String(line))));
  });
}

describe("D7: two servers on one folder", () => {
  it("the second refuses, naming the first; 5 rounds of 4 at once, each over the lock of a killed one", async () => {
    for (let round = 0; round < 5; round++) {
      const all = await Promise.all([1, 2, 3, 4].map((port) => startHolder(4000 + port)));
      const winners = all.filter(({ told }) => told.kind === "taken");
      expect(winners.length).toBe(1);
      const pid = winners[0]?.child.pid;
      for (const { told } of all) if (told.kind === "held") expect(told.holder.pid).toBe(pid);
      expect(findHolder(folder)?.pid).toBe(pid);
      for (const { child } of all) {
        const gone = new Promise((resolve) => child.once("exit", resolve));
        child.kill("SIGKILL");
        if (child.exitCode === null && child.signalCode === null) await gone;
      }
      expect(findHolder(folder)).toBeNull();
    }
    console.log("D7: 5 rounds x 4 servers");
  }, 180_000);

  it("a lock whose number was given to another process holds nothing", () => {
    writeFileSync(lockFileOf(folder), JSON.stringify({ pid: process.pid, port: 1, born: "1" }));
    expect(findHolder(folder)).toBeNull();
    expect(takeLock(folder, 3000).kind).toBe("taken");
  });

  it("a torn lock holds nothing, and giving it back leaves nothing behind", () => {
    writeFileSync(lockFileOf(folder), "{");
    const lock = takeLock(folder, 3000);
    expect(takeLock(folder, 3001)).toMatchObject({ kind: "held", holder: { pid: process.pid, port: 3000 } });
    if (lock.kind === "taken") lock.release();
    expect(readdirSync(folder)).toEqual([]);
  });
});
