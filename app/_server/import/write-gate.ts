/**
 * SQLite has one writer at a time, and better-sqlite3 waits for its turn with the whole thread. So while an import is
 * written by a thread of its own, the server's thread doesn't begin to write: it waits here, and goes on answering.
 */
interface Gate {
  closed: Promise<void> | null;
}

const KEY = Symbol.for("proofband.write-gate");
const shared = globalThis as { [KEY]?: Gate };

function gate(): Gate {
  shared[KEY] ??= { closed: null };
  return shared[KEY];
}

/** Resolves when the server's thread may write. Whoever goes on then writes within `WRITE_GRACE_MS`. */
export async function whenWritable(): Promise<void> {
  for (let closed = gate().closed; closed !== null; closed = gate().closed) await closed;
}

/** Whether the server's thread may write without waiting. */
export function isWritable(): boolean {
  return gate().closed === null;
}

/**
 * From passing the gate to its write an action takes a few milliseconds, on two busy cores up to a tenth of a second
 * (measured with the session form); so long the other thread waits between the closing and its first write.
 */
export const WRITE_GRACE_MS = 300;

/** Closes the gate and lets those who have passed it finish; returns what opens it again. */
export async function closeGate(): Promise<() => void> {
  // Looked at and closed without a pause between, so that two never close it at once.
  while (gate().closed !== null) await gate().closed;
  let open = () => {};
  gate().closed = new Promise((resolve) => {
    open = () => {
      gate().closed = null;
      resolve();
    };
  });
  await new Promise((resolve) => setTimeout(resolve, WRITE_GRACE_MS));
  return open;
}
