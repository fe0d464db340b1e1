import { createHash } from "node:crypto";
import { readClock } from "../clock";
import { afterAnswer } from "./answering";

/**
 * What one log-in, link, key or account may ask for: so many at once (a page brings a dozen files and answers with it, a
 * window that types keeps every second), and so many a second for as long as it likes. Two cores make some 40 pages a second.
 */
export const FLOOD = { burst: 1000, aSecond: 40 } as const;
/** Pages of one log-in that are made at one time; a browser asks for six. The others wait their turn. */
export const AT_ONCE = 8;
/** Requests of one log-in that may wait. */
export const WAITING = 60;
/** So long, in milliseconds, a request waits for its turn at most; eight pages that take longer are stuck. */
export const MOST_WAIT_MS = 30_000;
/** Seconds after which whoever may not even wait, or has waited so long, is told to come back. */
const WAIT_SECONDS = 5;
/** Senders that are remembered; beyond, whoever was heard of longest ago begins anew. */
export const MOST_SENDERS = 10_000;

interface Bucket {
  left: number;
  at: number;
}

interface Turns {
  inside: number;
  readonly queue: (() => void)[];
}

const KEY = Symbol.for("proofband.flood");
const shared = globalThis as {
  [KEY]?: { readonly buckets: Map<string, Bucket>; readonly turns: Map<string, Turns> };
};

function kept() {
  shared[KEY] ??= { buckets: new Map(), turns: new Map() };
  return shared[KEY];
}

/** The cookie of a log-in, and that of a family that came by a link. */
const [SESSION, FAMILY] = [/(?:^|; *)[^=;]*session_token=([^;]+)/, /(?:^|; *)[^=;]*proofband-family-[^=;]*=([^;]+)/];

/**
 * By what a request’s sender is known: the log-in, the key or the link that it shows. Null: by nothing, and an address is what
 * its sender says it is. What opens something isn’t kept, only its digest.
 *
 * @param link the secret part of a link; null: none
 */
export function senderOf(sent: Headers, link: string | null): string | null {
  const cookies = sent.get("cookie") ?? "";
  const shown = link ?? sent.get("authorization") ?? SESSION.exec(cookies)?.[1] ?? FAMILY.exec(cookies)?.[1];
  return shown === undefined || shown === "" ? null : createHash("sha256").update(shown).digest("base64url");
}

/** Counts one request of a sender. Seconds to wait; 0: it goes on. */
export function countRequest(sender: string, now: number = readClock().getTime()): number {
  const { buckets } = kept();
  const found = buckets.get(sender) ?? { left: FLOOD.burst, at: now };
  const since = Math.max(0, now - found.at) / 1000;
  const left = Math.min(FLOOD.burst, found.left + since * FLOOD.aSecond);
  buckets.delete(sender);
  buckets.set(sender, { left: left < 1 ? left : left - 1, at: now });
  for (const oldest of buckets.keys()) {
    if (buckets.size <= MOST_SENDERS) break;
    buckets.delete(oldest);
  }
  return left < 1 ? Math.max(1, Math.ceil((1 - left) / FLOOD.aSecond)) : 0;
}

function turnsOf(sender: string): Turns {
  const { turns: all } = kept();
  const turns = all.get(sender) ?? { inside: 0, queue: [] };
  all.delete(sender);
  all.set(sender, turns);
  for (const oldest of all.keys()) {
    if (all.size <= MOST_SENDERS) break;
    all.delete(oldest);
  }
  return turns;
}

function leave(sender: string, turns: Turns): void {
  const next = turns.queue.shift();
  if (next) next();
  else turns.inside -= 1;
  const { turns: all } = kept();
  // Whoever was forgotten meanwhile may have begun anew.
  if (turns.inside === 0 && all.get(sender) === turns) all.delete(sender);
}

/** Waits until somebody's turn ends and is handed on; `too-long`: none has. */
function waitIn(queue: (() => void)[]): Promise<"turn" | "too-long"> {
  return new Promise((resolve) => {
    const take = (): void => {
      clearTimeout(timer);
      resolve("turn");
    };
    const timer = setTimeout(() => {
      queue.splice(queue.indexOf(take), 1);
      resolve("too-long");
    }, MOST_WAIT_MS);
    timer.unref();
    queue.push(take);
  });
}

/**
 * Lets a page of a sender be made when it is its turn, so that one who asks for hundreds keeps nobody else waiting. What is
 * asked for leaves with its answer. Seconds to come back after; 0: it is its turn.
 */
export async function takeTurn(sender: string): Promise<number> {
  const turns = turnsOf(sender);
  if (turns.inside >= AT_ONCE) {
    if (turns.queue.length >= WAITING || (await waitIn(turns.queue)) === "too-long") return WAIT_SECONDS;
  } else turns.inside += 1;
  afterAnswer(() => leave(sender, turns));
  return 0;
}

/** Files of the program itself; and a path whose last part opens something to whoever has it. */
const [FILES, LINK] = ["/_next/static/", /^\/(?:join|family\/open)\/([^/]+)/];

/** By these a page is made; one that is asked for its head alone is made as well. */
const READS = new Set(["GET", "HEAD"]);

/** Counts a request against its sender, and lets a page wait its turn. Seconds to come back after; 0: it goes on. */
export async function holdBack(method: string, pathname: string, sent: Headers): Promise<number> {
  if (pathname.startsWith(FILES)) return 0;
  const sender = senderOf(sent, LINK.exec(pathname)?.[1] ?? null);
  if (sender === null) return 0;
  const seconds = countRequest(sender);
  // What changes something waits at the data itself; a page made while it is answered would wait for it, and it for the page.
  return seconds > 0 || !READS.has(method) ? seconds : takeTurn(sender);
}
