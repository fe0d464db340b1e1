import { statSync } from "node:fs";
import path from "node:path";
import { Worker } from "node:worker_threads";
import { type Database, IN_MEMORY } from "@/db/client";
import { readAcademyIds } from "@/db/read/academies";
import { readPreference } from "@/db/read/preferences";
import { rewriteDatabase } from "@/db/rewrite";
import { deletePreference, insertPreference } from "@/db/write/preferences";
import { diskFailureOf } from "../door/disk-failure";
import { closeGate } from "../import/write-gate";
import { PROGRAM } from "../keeping/program";

/** Whether traces of what was erased are left in the file or its journal: somebody reads an older state, or writes. */
export type Traces = "cleared" | "left";

const NAME = "traces";
/** The thread waits no longer for others at a time. */
const WAIT_MS = 100;
const PATIENCE = 5000;
/** A larger file is written anew by a thread of its own: this much takes a second, and pages would wait. */
const LARGE_BYTES = 64 * 1024 * 1024;

/** Notes, in the transaction of an erasure, that traces are to be cleared: killed in between, the next start does. */
export function noteTraces(db: Database, academyId: string): void {
  insertPreference(db, { academyId }, { viewer: PROGRAM, name: NAME, value: "left" });
}

/** Academies of a database of which traces are left. */
function withTraces(db: Database): string[] {
  return readAcademyIds(db).filter((academyId) => readPreference(db, { academyId }, PROGRAM, NAME) !== undefined);
}

export function hasTraces(db: Database): "yes" | "no" {
  return withTraces(db).length > 0 ? "yes" : "no";
}

function emptyJournal({ sqlite }: Database): Traces {
  const [done] = sqlite.pragma("wal_checkpoint(TRUNCATE)") as { busy: number }[];
  return done?.busy === 0 ? "cleared" : "left";
}

/** Takes the journal in, empties it and strikes the note, when the file is written anew. */
function finish(db: Database): Traces {
  db.sqlite.pragma(`busy_timeout = ${WAIT_MS}`);
  try {
    if (emptyJournal(db) === "left") return "left";
    for (const academyId of withTraces(db)) deletePreference(db, { academyId }, PROGRAM, NAME);
    return "cleared";
  } catch (error) {
    if (diskFailureOf(error) === null) throw error;
    return "left";
  } finally {
    db.sqlite.pragma(`busy_timeout = ${PATIENCE}`);
  }
}

/** Writes the file anew and empties the journal, so that nothing of what was erased is left in either. */
export function clearTraces(db: Database): Traces {
  if (hasTraces(db) === "no") return "cleared";
  try {
    rewriteDatabase(db);
  } catch (error) {
    // Another process writes, or there is no room for a second file; the next look tries again.
    if (diskFailureOf(error) === null) throw error;
    return "left";
  }
  return finish(db);
}

function rewriteBeside({ file }: Database): Promise<Traces> {
  const boot = path.join(/* turbopackIgnore: true */ process.cwd(), "app", "_server", "worker", "boot.mjs");
  const worker = new Worker(boot, { execArgv: [], workerData: { kind: "rewrite", file } });
  return new Promise((resolve) => {
    worker.once("error", () => resolve("left"));
    worker.once("exit", (status) => resolve(status === 0 ? "cleared" : "left"));
  });
}

const TRIES = 20;

/** The same where pages are served: nobody writes meanwhile, a large file is written anew beside this thread, and readers are waited for a while. */
export async function clearTracesSoon(db: Database): Promise<Traces> {
  if (hasTraces(db) === "no") return "cleared";
  const open = await closeGate();
  try {
    const isLarge = db.file !== IN_MEMORY && statSync(db.file).size > LARGE_BYTES;
    if (!isLarge) rewriteDatabase(db);
    else if ((await rewriteBeside(db)) === "left") return "left";
    for (let tried = 1; tried < TRIES; tried++) {
      if (finish(db) === "cleared") return "cleared";
      await new Promise((resolve) => setTimeout(resolve, WAIT_MS));
    }
    return "left";
  } catch (error) {
    if (diskFailureOf(error) === null) throw error;
    return "left";
  } finally {
    open();
  }
}
