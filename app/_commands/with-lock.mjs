import { mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";

const AGAIN_MS = 200;
/** A lock without an owner's number is somebody's who is just taking it, unless it is as old as this. */
const UNSIGNED_MS = 5000;

function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === "EPERM";
  }
}

function isStale(folder) {
  try {
    const pid = Number(readFileSync(path.join(folder, "pid"), "utf8"));
    return !(pid > 0 && isAlive(pid));
  } catch {
    try {
      return Date.now() - statSync(folder).mtimeMs > UNSIGNED_MS;
    } catch {
      // It has just been given back.
      return false;
    }
  }
}

function take(folder) {
  try {
    mkdirSync(folder);
  } catch (error) {
    if (error.code !== "EEXIST") throw error;
    if (isStale(folder)) rmSync(folder, { recursive: true, force: true });
    return false;
  }
  writeFileSync(path.join(folder, "pid"), String(process.pid));
  return true;
}

/**
 * Does some work while no other process does work under the same lock; what a process that is gone has left locked is taken over.
 *
 * @param folder the lock: a folder that is there while it is held, with its owner's process number
 * @param onWait called once, before the first wait
 */
export async function withLock(folder, work, onWait) {
  mkdirSync(path.dirname(folder), { recursive: true });
  for (let waited = false; !take(folder); waited = true) {
    if (!waited) onWait();
    await new Promise((resolve) => setTimeout(resolve, AGAIN_MS));
  }
  try {
    return await work();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
