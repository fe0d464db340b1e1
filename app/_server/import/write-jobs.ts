import { randomUUID } from "node:crypto";
import { readAcademy } from "@/db/read/academies";
import type { ImportBatch } from "@/db/read/import-batches";
import { undoImport } from "@/db/write/undo-import";
import { beginJudging } from "../analysis/judging";
import { currentInstant } from "../clock";
import { sayFailure } from "../door/quiet-failures";
import type { Viewer } from "../gate";
import { judgeAnew } from "../roster/load-verdicts";
import { type ImportTask, SHARED } from "../worker/import-task";
import { fileLength, findImportDraft } from "./import-desk";
import { dropOldFiles } from "./past-imports";
import { startWriter } from "./start-writer";
import { findScopes, writeImport } from "./write-import";

/**
 * Files beyond this many characters of a kept draft, and batches beyond this many readings, are worked on by a thread of
 * their own: about a thousand rows, which the server's thread writes in some 30 ms; starting a thread takes half a second.
 */
const SMALL = { characters: 90_000, readings: 1500 } as const;

/** A form waits so long for its answer: a small file is written and judged well within it. */
const SMALL_WAIT_MS = 20_000;
const LARGE_WAIT_MS = 1500;

/** Jobs whose end is remembered. */
const REMEMBERED = 50;

/** An import, or the undo of one, on its way. */
export interface ImportJob {
  /** The draft of an import; the batch of an undo. */
  readonly id: string;
  readonly kind: "import" | "undo";
  readonly batchId: string;
  readonly academyId: string;
  /** By which thread it is written: the server's, or one of its own. */
  readonly size: "small" | "large";
  state: "waiting" | "reading" | "writing" | "judging" | "done" | "stopped" | "failed";
  /** Of `ImportWritten` or `ImportUndo`; empty before. */
  outcome: string;
  failure: string;
  readonly seen: Int32Array;
  /** Lets pages wait for what is judged again; while a large job is written and judged they don't. */
  over: () => void;
  /** Resolves when it is written, or won't be. */
  readonly written: Promise<void>;
  /** Resolves when it is judged too. */
  readonly finished: Promise<void>;
}

/** By which door a file came, and who sent it. */
export interface From {
  readonly door: ImportBatch["door"];
  readonly who: string;
}

interface Jobs {
  readonly all: Map<string, ImportJob>;
  last: Promise<void>;
}

const KEY = Symbol.for("proofband.write-jobs");
const shared = globalThis as { [KEY]?: Jobs };

function jobs(): Jobs {
  shared[KEY] ??= { all: new Map(), last: Promise.resolve() };
  return shared[KEY];
}

/** The import of a draft, or the undo of a batch, that is on its way or has just ended; null: none. */
export function findJob({ scope }: Viewer, id: string): ImportJob | null {
  const job = jobs().all.get(`import ${id}`) ?? jobs().all.get(`undo ${id}`);
  return job && job.academyId === scope.academyId ? job : null;
}

/** The import that is to become a batch; null: none that is remembered. */
export function findJobOf({ scope }: Viewer, batchId: string): ImportJob | null {
  const found = [...jobs().all.values()].find((job) => job.batchId === batchId && job.kind === "import");
  return found?.academyId === scope.academyId ? found : null;
}

/** Stops an import before it is written whole; nothing of it stays. */
export function stopJob(job: ImportJob): void {
  Atomics.store(job.seen, SHARED.stop, 1);
}

/** How many readings of a job are settled, of how many. */
export function progressOf(job: ImportJob): { readonly settled: number; readonly total: number } {
  return { settled: Atomics.load(job.seen, SHARED.settled), total: Atomics.load(job.seen, SHARED.total) };
}

async function inWorker(viewer: Viewer, job: ImportJob, from: From): Promise<void> {
  const { batchId, id: draftId, seen } = job;
  const common = { choice: viewer.choice, userId: viewer.userId, batchId, shared: seen.buffer as SharedArrayBuffer };
  job.state = "reading";
  const task: ImportTask =
    job.kind === "import" ? { kind: "import", ...from, draftId, ...common } : { kind: "undo", ...common };
  const said = await startWriter(task, {
    isStopped: () => (Atomics.load(seen, SHARED.stop) === 1 ? "stopped" : "going"),
    writes() {
      job.state = "writing";
      // From now on: a page that came between the writing and the judging would wait for all of it.
      job.over = beginJudging(job.academyId);
    },
  });
  if (said.kind === "written") job.outcome = said.outcome;
  else if (said.kind === "stopped") job.state = "stopped";
  else if (said.kind === "failed") throw new Error(said.reason);
}

async function here(viewer: Viewer, job: ImportJob, from: From): Promise<void> {
  job.state = "writing";
  if (job.kind === "undo") {
    const undoing = { now: currentInstant(), who: viewer.name, scopeOf: findScopes(viewer) };
    job.outcome = undoImport(viewer.db, viewer.scope, job.batchId, undoing).kind;
    return;
  }
  const draft = findImportDraft(viewer, job.id);
  if (!draft) job.outcome = "not-there";
  else
    job.outcome = (
      await writeImport(viewer, draft, {
        ...from,
        batchId: job.batchId,
        draftId: job.id,
        async onReady(readings) {
          Atomics.store(job.seen, SHARED.total, readings);
        },
      })
    ).kind;
}

/** An archive may have brought the academy's season along. */
function asItIs(viewer: Viewer): Viewer {
  return { ...viewer, academy: readAcademy(viewer.db, viewer.scope) };
}

function complain(job: ImportJob, error: unknown): void {
  job.failure = error instanceof Error ? error.message : String(error);
  process.stderr.write(`${job.kind} ${job.batchId}: ${error instanceof Error ? sayFailure(error) : "failed"}\n`);
}

async function write(viewer: Viewer, job: ImportJob, from: From): Promise<void> {
  if (Atomics.load(job.seen, SHARED.stop) === 1) {
    job.state = "stopped";
    return;
  }
  try {
    await (job.size === "small" ? here : inWorker)(viewer, job, from);
  } catch (error) {
    job.state = "failed";
    complain(job, error);
  }
}

/** Judges what was written. What fails here is saved all the same: the next page judges it. */
async function judge(viewer: Viewer, job: ImportJob): Promise<void> {
  const wrote = job.outcome === "imported" || job.outcome === "undone";
  try {
    if (wrote && job.size === "large") job.state = "judging";
    if (wrote) await judgeAnew(asItIs(viewer));
  } catch (error) {
    complain(job, error);
  } finally {
    job.over();
  }
  if (!["stopped", "failed"].includes(job.state)) job.state = "done";
}

function enqueue(viewer: Viewer, job: Pick<ImportJob, "id" | "kind" | "batchId" | "size">, from: From): ImportJob {
  const { all, last } = jobs();
  const key = `${job.kind} ${job.id}`;
  const running = all.get(key);
  if (running && !["done", "stopped", "failed"].includes(running.state)) return running;
  const seen = new Int32Array(new SharedArrayBuffer(4 * SHARED.places));
  const { academyId } = viewer.scope;
  let begin = () => {};
  const begun = new Promise<void>((resolve) => {
    begin = resolve;
  });
  const written: Promise<void> = begun.then(() => write(viewer, made, from));
  const finished: Promise<void> = written.then(() => judge(viewer, made));
  const made: ImportJob = {
    ...job,
    academyId,
    state: "waiting",
    outcome: "",
    failure: "",
    seen,
    over: () => {},
    written,
    finished,
  };
  all.delete(key);
  all.set(key, made);
  for (const id of [...all.keys()].slice(0, -REMEMBERED)) all.delete(id);
  jobs().last = last.then(() => {
    begin();
    return made.written;
  });
  return made;
}

/** Starts to write the file of a draft, after those that were started before; a draft that is on its way is not started twice. */
export function startImport(viewer: Viewer, draftId: string, from: From): ImportJob {
  dropOldFiles(viewer);
  const size = fileLength(viewer, draftId) > SMALL.characters ? "large" : "small";
  return enqueue(viewer, { id: draftId, kind: "import", batchId: randomUUID(), size }, from);
}

/** Starts to take an import back. */
export function startUndo(viewer: Viewer, batchId: string, readings: number): ImportJob {
  const size = readings > SMALL.readings ? "large" : "small";
  return enqueue(viewer, { id: batchId, kind: "undo", batchId, size }, { door: "page", who: viewer.name });
}

async function atMost(work: Promise<void>, milliseconds: number): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<void>((resolve) => {
    timer = setTimeout(resolve, milliseconds);
  });
  await Promise.race([work, late]);
  clearTimeout(timer);
}

/** Waits for the end of a small job; of a large one only a moment, since its page tells how far it is. */
export function awaitJob(job: ImportJob): Promise<void> {
  return atMost(job.finished, job.size === "large" ? LARGE_WAIT_MS : SMALL_WAIT_MS);
}

/** Waits until a job is written, or won't be, but no longer than that. */
export function awaitWritten(job: ImportJob, milliseconds: number): Promise<void> {
  return atMost(job.written, milliseconds);
}
