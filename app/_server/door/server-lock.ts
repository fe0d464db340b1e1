import { existsSync, linkSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";

/** Who serves a data folder. */
export interface Holder {
  readonly pid: number;
  readonly port: number;
  /** When the process began, as the system counts; null where the system doesn't say. Tells a reused number. */
  readonly born: string | null;
}

export type Lock = { readonly kind: "taken"; release(): void } | { readonly kind: "held"; readonly holder: Holder };

/** Times that a lock is tried for; each waits a little longer for whoever is removing a dead one. */
const TRIES = 40;

export function lockFileOf(folder: string): string {
  return path.join(folder, "server.lock");
}

function bornOf(pid: number): string | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    return stat.slice(stat.lastIndexOf(")") + 2).split(" ")[19] ?? null;
  } catch {
    return null;
  }
}

function isAlive(holder: Holder): boolean {
  try {
    process.kill(holder.pid, 0);
  } catch (error) {
    // Another user's process answers EPERM, and is alive.
    if ((error as NodeJS.ErrnoException).code === "ESRCH") return false;
  }
  const born = bornOf(holder.pid);
  return holder.born === null || born === null || holder.born === born;
}

function readHolder(file: string): Holder | null {
  try {
    const read = JSON.parse(readFileSync(file, "utf8")) as Partial<Holder>;
    if (!Number.isInteger(read.pid)) return null;
    return { pid: Number(read.pid), port: Number(read.port ?? 0), born: read.born ?? null };
  } catch {
    return null;
  }
}

/** Who serves the folder now; null: nobody alive. */
export function findHolder(folder: string): Holder | null {
  const holder = readHolder(lockFileOf(folder));
  return holder && isAlive(holder) ? holder : null;
}

// A hard link appears whole or not at all, and never over another one.
function tryLink(from: string, to: string): boolean {
  try {
    linkSync(from, to);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") return false;
    throw error;
  }
}

// Only who holds the guard removes a dead lock, and judges it again first: two that find one can't remove a living one
// that a third has put in its place. A guard is held for an instant; one whose holder was killed just then is dead too.
function removeDead(file: string, own: string): void {
  const guard = `${file}.guard`;
  if (!tryLink(own, guard)) {
    const guardian = readHolder(guard);
    if (guardian && !isAlive(guardian)) rmSync(guard, { force: true });
    return;
  }
  try {
    // Gone already: whatever stands there next is somebody's.
    if (!existsSync(file)) return;
    const holder = readHolder(file);
    if (holder ? !isAlive(holder) : existsSync(file)) rmSync(file, { force: true });
  } finally {
    rmSync(guard, { force: true });
  }
}

/** Takes the folder for this process, or says who has it. A dead process holds nothing. */
export function takeLock(folder: string, port: number): Lock {
  const file = lockFileOf(folder);
  const own = `${file}.${process.pid}`;
  const text = JSON.stringify({ pid: process.pid, port, born: bornOf(process.pid) } satisfies Holder);
  writeFileSync(own, text, { mode: 0o600 });
  try {
    for (let tried = 0; tried < TRIES; tried++) {
      if (tryLink(own, file)) {
        return {
          kind: "taken",
          release() {
            if (readHolder(file)?.pid === process.pid) rmSync(file, { force: true });
          },
        };
      }
      const holder = findHolder(folder);
      if (holder) return { kind: "held", holder };
      removeDead(file, own);
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, tried);
    }
  } finally {
    rmSync(own, { force: true });
  }
  throw new Error(`the lock could not be taken: ${file}`);
}
