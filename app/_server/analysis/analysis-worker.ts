import path from "node:path";
import { Worker } from "node:worker_threads";
import type { TaskKind, TaskOf, TaskResult, TaskResultOf } from "../worker/tasks";

/** A single task that takes longer than this has lost its way. */
const TASK_LIMIT_MS = 120_000;

interface Waiting {
  readonly resolve: (result: TaskResult) => void;
  readonly reject: (error: Error) => void;
}

interface Pool {
  worker: Worker | null;
  readonly waiting: Map<number, Waiting>;
  next: number;
  timer: NodeJS.Timeout | null;
}

const KEY = Symbol.for("proofband.analysis-worker");
const shared = globalThis as { [KEY]?: Pool };

function pool(): Pool {
  shared[KEY] ??= { worker: null, waiting: new Map(), next: 0, timer: null };
  return shared[KEY];
}

function settle(id: number, message: { readonly result?: TaskResult; readonly failure?: string }): void {
  const kept = pool().waiting.get(id);
  pool().waiting.delete(id);
  watch();
  if (message.result) kept?.resolve(message.result);
  else kept?.reject(new Error(message.failure ?? "the analysis worker ended"));
}

/** Ends a worker that has said nothing for too long; what waited is told so. */
function watch(): void {
  const { timer, waiting, worker } = pool();
  if (timer) clearTimeout(timer);
  if (waiting.size === 0) {
    // An idle worker must not keep a command from ending.
    worker?.unref();
    pool().timer = null;
    return;
  }
  worker?.ref();
  pool().timer = setTimeout(() => void pool().worker?.terminate(), TASK_LIMIT_MS);
}

function running(): Worker {
  const known = pool();
  if (known.worker) return known.worker;
  const worker = new Worker(
    path.join(/* turbopackIgnore: true */ process.cwd(), "app", "_server", "worker", "boot.mjs"),
    { execArgv: [] },
  );
  worker.on(
    "message",
    ({ id, ...message }: { readonly id: number; readonly result?: TaskResult; readonly failure?: string }) =>
      settle(id, message),
  );
  const end = (reason: string) => {
    known.worker = null;
    for (const id of [...known.waiting.keys()]) settle(id, { failure: reason });
  };
  worker.on("error", (error) => end(error.message));
  worker.on("exit", () => end("the analysis worker ended"));
  known.worker = worker;
  return worker;
}

/** Does a task beside the server's thread, one after the other. */
export async function workOn<K extends TaskKind>(task: TaskOf<K>): Promise<TaskResultOf<K>> {
  const result = await new Promise<TaskResult>((resolve, reject) => {
    const id = pool().next++;
    pool().waiting.set(id, { resolve, reject });
    running().postMessage({ id, task });
    watch();
  });
  if (result.kind !== task.kind) throw new Error("the analysis worker answered another question");
  return result as TaskResultOf<K>;
}
