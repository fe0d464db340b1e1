import { readClock } from "../clock";

/** What was made is shown on the next page that asks, within this time. */
const SHOWN_MS = 10 * 60_000;

interface Waiting {
  readonly value: unknown;
  readonly until: number;
}

// On the global object: the bundler may load this file more than once in one process.
const KEY = Symbol.for("proofband.shown-once");
const shared = globalThis as { [KEY]?: Map<string, Waiting> };

function waiting(): Map<string, Waiting> {
  shared[KEY] ??= new Map();
  const now = readClock().getTime();
  for (const [key, { until }] of shared[KEY]) if (until < now) shared[KEY].delete(key);
  return shared[KEY];
}

/** Holds in memory what is never written: a link, a secret, codes. Another one under the same key takes its place. */
export function holdOnce(key: string, value: unknown): void {
  waiting().set(key, { value, until: readClock().getTime() + SHOWN_MS });
}

/** What is held, left where it is; null: nothing, or not any more. `T` is what was held under that key. */
export function seeHeld<T>(key: string): T | null {
  return (waiting().get(key)?.value as T | undefined) ?? null;
}

/** What is held, for the last time; null: nothing, or not any more. */
export function takeHeld<T>(key: string): T | null {
  const held = seeHeld<T>(key);
  waiting().delete(key);
  return held;
}

/** Lets go of what is held under some keys before it is shown. */
export function forgetHeldOnce(isGone: (key: string) => boolean): void {
  for (const key of [...waiting().keys()]) if (isGone(key)) waiting().delete(key);
}
