import path from "node:path";
import { Worker } from "node:worker_threads";
import {
  type ArchiveResult,
  type ArchiveTask,
  type FileMessage,
  type FileResult,
  type FileTask,
  PHASES,
  type PlanPart,
  PROGRESS,
} from "../worker/file-tasks";
import { joined } from "../worker/joined-plan";

/** Memory of a worker that reads a file, in MB: a workbook made to fill the memory ends its worker and nothing else. */
const MEMORY_MB = 256;
/**
 * So long may opening a workbook take; one of 100,000 rows takes about four seconds on one core, and 25 where six other
 * programs want it. A file that is made to do harm is ended by its memory within seconds.
 */
export const OPENING_LIMIT_MS = 60_000;
/** So long may a file take as a whole; 100,000 rows take a few seconds. */
export const WHOLE_LIMIT_MS = 180_000;
/** A worker that read a file of more letters than this (base64) is not kept: its memory is of more use elsewhere. */
const LARGE_FILE = 1_000_000;
/** Files that are read at one time; more wait. */
const AT_ONCE = 2;

/** A file being read. */
export interface FileRun<Result = FileResult> {
  /** Rejects only when it was stopped, or the program itself has a fault. */
  readonly result: Promise<Result>;
  progress(): { readonly phase: number; readonly read: number; readonly of: number };
  /** Ends the reading; `result` rejects. */
  stop(): void;
}

interface Waiting {
  begin(): void;
}

const KEY = Symbol.for("proofband.file-workers");
const shared = globalThis as { [KEY]?: { idle: Worker[]; busy: number; waiting: Waiting[] } };

function pool() {
  shared[KEY] ??= { idle: [], busy: 0, waiting: [] };
  return shared[KEY];
}

function newWorker(): Worker {
  const file = path.join(/* turbopackIgnore: true */ process.cwd(), "app", "_server", "worker", "boot.mjs");
  return new Worker(file, {
    execArgv: [],
    workerData: "files",
    resourceLimits: { maxOldGenerationSizeMb: MEMORY_MB },
  });
}

/** Frees a place for the next file; a worker that ended well is kept, since starting one takes most of a second. */
function release(worker: Worker | null): void {
  const known = pool();
  known.busy--;
  if (worker && known.idle.length === 0) {
    // An idle worker must not keep a command from ending.
    worker.unref();
    known.idle.push(worker);
    worker.once("exit", () => known.idle.splice(0, known.idle.length, ...known.idle.filter((each) => each !== worker)));
  } else void worker?.terminate();
  known.waiting.shift()?.begin();
}

/** Whether a worker ended because its memory ran out. */
export function isOutOfMemory(error: unknown): boolean {
  return (error as { code?: string } | null)?.code === "ERR_WORKER_OUT_OF_MEMORY";
}

/** Reads whole files. */
export interface FileReading {
  table(task: FileTask): Promise<FileResult>;
  archive(task: ArchiveTask): Promise<ArchiveResult>;
}

/** Reads them beside this thread. */
export const BESIDE: FileReading = {
  table: (task) => startFile(task).result,
  archive: (task) => startArchive(task).result,
};

type Task = FileTask | ArchiveTask;
type Result = FileResult | ArchiveResult;

function run(task: Task, numbers: Int32Array, stopped: AbortSignal): Promise<Result> {
  const worker = pool().idle.pop() ?? newWorker();
  worker.ref();
  worker.removeAllListeners();
  const parts: PlanPart[] = [];
  return new Promise((resolve, reject) => {
    const end = (settle: () => void, kept: Worker | null): void => {
      clearTimeout(opening);
      clearTimeout(whole);
      worker.removeAllListeners();
      // Whatever a worker that is let go still says is of no more use.
      worker.on("error", () => undefined);
      stopped.removeEventListener("abort", stop);
      if (!kept) void worker.terminate();
      release(kept);
      settle();
    };
    const heavy = (): void => end(() => resolve({ kind: "heavy" }), null);
    const stop = (): void => end(() => reject(new Error("the reading was stopped")), null);
    const opening = setTimeout(() => {
      if (Atomics.load(numbers, PROGRESS.phase) <= PHASES.opening) heavy();
    }, OPENING_LIMIT_MS);
    const whole = setTimeout(heavy, WHOLE_LIMIT_MS);
    stopped.addEventListener("abort", stop);
    worker.on("message", (message: FileMessage) => {
      if (message.kind === "part") for (const part of message.part) parts.push(part);
      else if (message.kind === "failure") end(() => reject(new Error(message.message)), worker);
      else end(() => resolve(joined(message.result, parts)), isLarge(task, message.result) ? null : worker);
    });
    worker.on("error", (error) => (isOutOfMemory(error) ? heavy() : end(() => reject(error), null)));
    worker.on("exit", () => end(() => reject(new Error("the file worker ended")), null));
    worker.postMessage({ task, numbers });
  });
}

// What turns out to be no archive was looked at and no more; it is read as a table next.
function isLarge({ draft }: Task, { kind }: Result): boolean {
  return draft.file.length > LARGE_FILE && kind !== "no-archive";
}

/** Reads a table beside the server's thread, in a worker with little memory. */
export function startFile(task: FileTask): FileRun {
  return start(task) as FileRun;
}

/** Reads a file that may be an archive, in the same way. */
export function startArchive(task: ArchiveTask): FileRun<ArchiveResult> {
  return start(task) as FileRun<ArchiveResult>;
}

function start(task: Task): FileRun<Result> {
  const numbers = new Int32Array(new SharedArrayBuffer(12));
  const aborting = new AbortController();
  const known = pool();
  const result = new Promise<Result>((resolve, reject) => {
    const begin = (): void => {
      if (aborting.signal.aborted) {
        pool().waiting.shift()?.begin();
        reject(new Error("the reading was stopped"));
        return;
      }
      known.busy++;
      run(task, numbers, aborting.signal).then(resolve, reject);
    };
    if (known.busy < AT_ONCE) begin();
    else known.waiting.push({ begin });
  });
  return {
    result,
    progress: () => ({
      phase: Atomics.load(numbers, PROGRESS.phase),
      read: Atomics.load(numbers, PROGRESS.read),
      of: Atomics.load(numbers, PROGRESS.of),
    }),
    stop: () => aborting.abort(),
  };
}
