import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";

const WATCH_EVERY_MS = 500;
const KILL_AFTER_MS = 5000;

const running = new Set();
let stopping = false;

// A TERM to npm ends npm and not what it started, so whoever started us is watched, and whoever started that.
function ancestors() {
  const parents = [process.ppid];
  try {
    const stat = readFileSync(`/proc/${process.ppid}/stat`, "utf8");
    parents.push(Number(stat.slice(stat.lastIndexOf(")") + 2).split(" ")[1]));
  } catch {
    return parents.join();
  }
  return parents.join();
}

// Every child leads a process group of its own, so that what it started ends with it.
function signalGroup(child, signal) {
  try {
    process.kill(-child.pid, signal);
  } catch {
    child.kill(signal);
  }
}

function stopChildren(signal = "SIGTERM") {
  stopping = true;
  for (const child of running) signalGroup(child, signal);
  setTimeout(() => {
    for (const child of running) signalGroup(child, "SIGKILL");
  }, KILL_AFTER_MS).unref();
}

export function stopWithParent() {
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.on(signal, () => stopAndLeave(signal));
  const born = ancestors();
  setInterval(() => {
    if (ancestors() !== born) stopAndLeave("SIGTERM");
  }, WATCH_EVERY_MS).unref();
}

// Ends what was started, and then this process with the status: by default that of the signal.
export function stopAndLeave(signal, status = signal === "SIGINT" ? 130 : 143) {
  if (stopping) return;
  stopChildren(signal === "SIGHUP" ? "SIGTERM" : signal);
  const leave = () => (running.size === 0 ? process.exit(status) : setTimeout(leave, 50));
  leave();
}

// Resolves to the exit status; `onOutput` also receives what the child prints. Once stopping, it never resolves:
// nobody should go on, or complain, because of a child that was told to end.
export function runChild(command, args, { env = process.env, cwd = process.cwd(), onOutput } = {}) {
  return new Promise((resolve, reject) => {
    const stdio = onOutput ? ["ignore", "pipe", "pipe"] : ["ignore", "inherit", "inherit"];
    const child = spawn(command, args, { env, cwd, stdio, detached: true });
    running.add(child);
    if (onOutput) {
      for (const [stream, echo] of [
        [child.stdout, process.stdout],
        [child.stderr, process.stderr],
      ]) {
        stream.on("data", (chunk) => {
          echo.write(chunk);
          onOutput(String(chunk));
        });
      }
    }
    child.on("error", (error) => {
      running.delete(child);
      reject(error);
    });
    child.on("close", (code, signal) => {
      running.delete(child);
      if (!stopping) resolve(code ?? (signal === "SIGINT" ? 130 : 143));
    });
  });
}
