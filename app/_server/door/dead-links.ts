import { readClock } from "../clock";

/**
 * Links that open nothing are answered at once up to `atOnce` in a minute, whoever asks: an address is what its sender says it
 * is. Beyond, each waits (TRUST.md S7). A link of 256 bits can't be guessed; this keeps who tries from costing others anything.
 */
export const DEAD_LINKS = { atOnce: 20, minuteMs: 60_000, waitMs: 2000 } as const;

const KEY = Symbol.for("proofband.dead-links");
const shared = globalThis as { [KEY]?: { from: number; count: number } };

/** Counts a link that opens nothing; milliseconds that its answer waits. */
export function countDeadLink(now: number = readClock().getTime()): number {
  shared[KEY] ??= { from: now, count: 0 };
  const counted = shared[KEY];
  if (Math.abs(now - counted.from) >= DEAD_LINKS.minuteMs) Object.assign(counted, { from: now, count: 0 });
  counted.count += 1;
  return counted.count > DEAD_LINKS.atOnce ? DEAD_LINKS.waitMs : 0;
}

/** Lets the answer to a link that opens nothing wait as long as it has to. One that opens something never comes here. */
export async function slowDeadLink(): Promise<void> {
  const wait = countDeadLink();
  if (wait > 0) await new Promise((resolve) => setTimeout(resolve, wait));
}
