import { type ChildProcess, spawn } from "node:child_process";
import path from "node:path";
import { createInterface } from "node:readline";
import { builtScript } from "../built-script";

/** A process of its own that says one line after another. */
export interface Child {
  readonly process: ChildProcess;
  readonly lines: string[];
  /** Waits for a line that begins so; fails when the process ends without. */
  saying(begin: string): Promise<string>;
  readonly ended: Promise<number | null>;
}

/** Starts a script of this folder. */
export function startChild(script: string, args: readonly string[], env: Readonly<Record<string, string>>): Child {
  return startScript(path.join("tests", "trust", script), args, env);
}

/** Starts a script of the project. */
export function startScript(file: string, args: readonly string[], env: Readonly<Record<string, string>>): Child {
  const child = spawn(process.execPath, [builtScript(file), ...args], {
    env: { ...process.env, ...env },
    stdio: ["ignore", "pipe", "pipe"],
  });
  const lines: string[] = [];
  let complaint = "";
  child.stderr.on("data", (part) => {
    complaint += String(part);
  });
  const waiting = new Set<() => void>();
  createInterface(child.stdout).on("line", (line) => {
    lines.push(line);
    for (const look of waiting) look();
  });
  const ended = new Promise<number | null>((resolve) => child.once("close", resolve));
  return {
    process: child,
    lines,
    ended,
    saying: (begin) =>
      new Promise((resolve, reject) => {
        const look = () => {
          const found = lines.find((line) => line.startsWith(begin));
          if (found === undefined) return;
          waiting.delete(look);
          resolve(found);
        };
        waiting.add(look);
        look();
        void ended.then(() => reject(new Error(`ended without saying ${begin}: ${complaint}`)));
      }),
  };
}

/** Numbers from 0 to below 1 that a seed names. */
export function seededUniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
