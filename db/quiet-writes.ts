import type { Database } from "./client";

// On the global object: the bundler may load this file more than once in one process.
const KEY = Symbol.for("proofband.quiet-writes");
const shared = globalThis as { [KEY]?: WeakMap<object, number> };

function counted(): WeakMap<object, number> {
  shared[KEY] ??= new WeakMap();
  return shared[KEY];
}

/** Rows that this connection ever changed. */
export function totalChanges({ sqlite }: Database): number {
  return sqlite.prepare<[], number>("SELECT total_changes()").pluck().get() ?? 0;
}

/** Of those, the ones that were written quietly. */
export function quietChanges({ sqlite }: Database): number {
  return counted().get(sqlite) ?? 0;
}

/**
 * Writes what no list and no verdict rests on (that somebody looked, what is being typed, what a viewer prefers): what was worked
 * out of the rest of the file holds on. Whatever isn't written by it counts as a change of everything, so that forgetting it
 * costs time alone.
 */
export function writeQuietly<T>(db: Database, work: () => T): T {
  // What one of them writes inside another is counted once.
  const loud = totalChanges(db) - quietChanges(db);
  try {
    return work();
  } finally {
    counted().set(db.sqlite, totalChanges(db) - loud);
  }
}
