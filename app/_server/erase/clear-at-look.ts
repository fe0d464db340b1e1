import { type Database, IN_MEMORY } from "@/db/client";
import { clearTracesSoon, hasTraces, type Traces } from "./clear-traces";

/**
 * Looks that are passed over after a try that cleared nothing: each try writes the whole file anew, while everybody waits to
 * write, and what reads so long (a copy of the data, say) reads for minutes. Doubled with each try; at a look a minute the
 * last ones are an hour apart.
 */
export const PASSED_OVER = { first: 1, most: 60 } as const;

interface Waiting {
  readonly passOver: number;
  left: number;
}

const KEY = Symbol.for("proofband.clear-at-look");
const shared = globalThis as { [KEY]?: Map<string, Waiting> };

/** Clears what traces an erasure could not, when it is time to try again; `wait`: it isn't. */
export async function clearAtLook(
  db: Database,
  clear: (db: Database) => Promise<Traces> = clearTracesSoon,
): Promise<Traces | "wait"> {
  shared[KEY] ??= new Map();
  const waiting = shared[KEY];
  const known = waiting.get(db.file);
  if (db.file === IN_MEMORY || hasTraces(db) === "no") {
    waiting.delete(db.file);
    return "cleared";
  }
  if (known && known.left > 0) {
    known.left -= 1;
    return "wait";
  }
  const came = await clear(db);
  const passOver = known ? Math.min(known.passOver * 2, PASSED_OVER.most) : PASSED_OVER.first;
  if (came === "cleared") waiting.delete(db.file);
  else waiting.set(db.file, { passOver, left: passOver });
  return came;
}
