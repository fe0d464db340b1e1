import type { Database } from "@/db/client";
import { readFileStamp } from "@/db/read/file-stamp";
import { isBehind, isJudging } from "../analysis/judging";
import { type Viewer, viewerKey } from "../gate";

/** What was worked out for one viewer, and of what. */
interface Held {
  readonly db: Database;
  readonly fileStamp: string;
  readonly asked: string;
  readonly made: unknown;
}

/** Viewers for whom something is held; the one who asked longest ago goes first. */
const HELD_VIEWERS = 8;

// On the global object: the bundler may load this file more than once in one process.
const KEY = Symbol.for("proofband.held-rosters");
const shared = globalThis as { [KEY]?: Map<string, Held> };

function memory(): Map<string, Held> {
  shared[KEY] ??= new Map();
  return shared[KEY];
}

const nameOf = (viewer: Viewer): string => `${viewer.academy.id} ${viewerKey(viewer)}`;

/**
 * What was worked out for this viewer before, if nothing that it rests on was written since: whoever sorts, filters and turns
 * pages of a roster asks for the same students again and again. While something isn't judged yet nothing is held: each page
 * asks whether it is by then.
 *
 * @param asked all that it depends on besides the viewer and what is on file
 */
export async function heldRoster<T>(viewer: Viewer, asked: string, make: () => Promise<T>): Promise<T> {
  const { academy, db, today, words, roles, scope } = viewer;
  const name = nameOf(viewer);
  const reach = scope.students === "all" ? "all" : scope.students.join();
  const whole = [today, words.locale, roles.join(), reach, asked].join("\n");
  const held = memory().get(name);
  memory().delete(name);
  if (held && held.db === db && held.asked === whole && held.fileStamp === readFileStamp(db)) {
    memory().set(name, held);
    return held.made as T;
  }
  const before = readFileStamp(db);
  const made = await make();
  // What was written meanwhile may be in it by half: it is made anew the next time.
  const isJudged = !isJudging(academy.id) && !isBehind(academy.id);
  if (isJudged && readFileStamp(db) === before) memory().set(name, { db, fileStamp: before, asked: whole, made });
  for (const other of [...memory().keys()].slice(0, -HELD_VIEWERS)) memory().delete(other);
  return made;
}

/** Lets go of what is held for an academy's viewers: somebody of it was erased. */
export function forgetHeldRosters(academyId: string): void {
  for (const name of [...memory().keys()]) if (name.startsWith(`${academyId} `)) memory().delete(name);
}
