/** Links that open nothing are answered at once so many times a minute on this server; then whoever comes next waits. */
const AT_ONCE = 20;
const MINUTE_MS = 60_000;

// On the global object: the bundler may load this file more than once in one process.
const KEY = Symbol.for("proofband.slow-tokens");
const shared = globalThis as { [KEY]?: number[] };

/**
 * Counts one more link that opened nothing (TRUST.md S7). A link that opens is looked up first and never counted, so that
 * nobody is kept out by somebody else's guesses.
 *
 * @param now milliseconds since 1970
 * @returns seconds to wait; 0: it is told that it opens nothing
 */
export function countDeadLink(now: number): number {
  // A clock that was set back makes nobody wait longer than a minute.
  const recent = (shared[KEY] ?? []).filter((at) => now - at < MINUTE_MS && at <= now);
  const wait = recent.length < AT_ONCE ? 0 : MINUTE_MS - (now - (recent[0] ?? now));
  shared[KEY] = wait === 0 ? [...recent, now] : recent;
  return Math.ceil(wait / 1000);
}
