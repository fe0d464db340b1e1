import type { Database } from "@/db/client";
import { withoutWaiting } from "@/db/client";
import { insertRecordViews, type RecordView } from "@/db/write/record-views";
import type { StudentScope } from "@/lib/domain/scope";
import { wordsFor } from "@/lib/words/catalogue";
import { readClock } from "../clock";
import { beforeClosing } from "../database";
import { diskFailureOf } from "../door/disk-failure";
import { sayFailure } from "../door/quiet-failures";
import { isWritable } from "../import/write-gate";

/** A look at one student's record. */
export interface Look {
  readonly scope: StudentScope;
  readonly view: RecordView;
}

interface Waiting extends Look {
  readonly db: Database;
}

/**
 * The same page by the same person again is no second look within this time: a page that is laid out anew, turned to the next
 * club, or gone back to. A minute is shorter than any reading of a season, so that none is swallowed that a family would count.
 */
export const SAME_LOOK_MS = 60_000;

/** Looks that wait are tried again this often: a page that follows finds them written, and nobody notices the work. */
const AGAIN_MS = 250;

/** More looks than this aren't held (some 3 MB); with one every second that is three hours of a disk that takes nothing. */
const MOST_WAITING = 10_000;

interface Queue {
  waiting: Waiting[];
  timer: NodeJS.Timeout | null;
  /** Said already that looks can't be written. */
  complained: "no" | "yes";
  readonly lately: Map<string, number>;
}

// On the global object: the bundler may load this file more than once in one process.
const KEY = Symbol.for("proofband.looks");
const shared = globalThis as { [KEY]?: Queue };

function queue(): Queue {
  shared[KEY] ??= { waiting: [], timer: null, complained: "no", lately: new Map() };
  return shared[KEY];
}

function log(key: string, args: Readonly<Record<string, string | number>>): void {
  process.stderr.write(`${wordsFor("en").say(`looked.log.${key}`, args)}\n`);
}

/** Whether somebody has just looked at the very same; remembers that they did. Each file that goes out is a look of its own. */
function isRepeated(db: Database, { scope, view }: Look): boolean {
  if (view.what === "file") return false;
  const { lately } = queue();
  const now = readClock().getTime();
  for (const [key, at] of lately) {
    if (now - at < SAME_LOOK_MS && at <= now) break;
    lately.delete(key);
  }
  const key = [db.file, scope.studentId, view.who, view.role, view.what, view.place].join("\n");
  if (lately.has(key)) return true;
  lately.set(key, now);
  return false;
}

/** Writes what waits, file by file, so that what was written doesn't wait any more. A closed file's looks can't be written. */
function writeAll(write: (db: Database, work: () => void) => void): void {
  for (const db of new Set(queue().waiting.map((each) => each.db))) {
    const mine = queue().waiting.filter((each) => each.db === db);
    if (db.sqlite.open) write(db, () => insertRecordViews(db, mine));
    queue().waiting = queue().waiting.filter((each) => each.db !== db);
  }
  queue().complained = "no";
}

function complain(error: unknown): void {
  if (queue().complained === "yes") return;
  queue().complained = "yes";
  const why = diskFailureOf(error) ?? (error instanceof Error ? sayFailure(error).replaceAll(/\s+/g, " ") : "unknown");
  log("waiting", { why, count: queue().waiting.length });
}

function tryAgainLater(): void {
  queue().timer ??= setTimeout(() => {
    queue().timer = null;
    writeLooks();
  }, AGAIN_MS).unref();
}

/** Writes what waits if that can be done at once; else it is tried again soon. */
function writeLooks(): void {
  if (queue().waiting.length === 0) return;
  if (!isWritable()) {
    tryAgainLater();
    return;
  }
  try {
    writeAll(withoutWaiting);
  } catch (error) {
    complain(error);
    tryAgainLater();
  }
}

/** For the last time: waits for whoever writes, and says how many looks are lost if they can't be written now either. */
function writeLast(): void {
  const { timer } = queue();
  if (timer) clearTimeout(timer);
  queue().timer = null;
  try {
    writeAll((_db, work) => work());
  } catch {
    log("lost", { count: queue().waiting.length });
  }
}

/**
 * Keeps that somebody looks at students' records. It is written before the page is sent, by one insert, unless somebody else
 * writes just then (an import's thread, another program) or the disk takes nothing: then it waits in memory, no page waits for
 * it, and it is written as soon as that is over or the program ends. A look isn't refused because it can't be written down; that
 * it can't be is logged. So what a killed process or a pulled plug can lose is the looks that happened while an import was being
 * written, or while nothing could be saved at all.
 */
export function keepLooks(db: Database, looks: readonly Look[]): void {
  const fresh = looks.filter((look) => !isRepeated(db, look));
  if (fresh.length === 0) return;
  const { waiting } = queue();
  beforeClosing("looks", writeLast);
  const room = MOST_WAITING - waiting.length;
  if (fresh.length > room) log("dropped", { count: fresh.length - room });
  for (const look of fresh.slice(0, Math.max(0, room))) waiting.push({ ...look, db });
  writeLooks();
}
