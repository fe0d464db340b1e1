import path from "node:path";
import { Worker } from "node:worker_threads";
import { PHASES, PROGRESS } from "../worker/file-tasks";
import type { GivenTask, ImportSaid, ImportTask } from "../worker/import-task";
import { isOutOfMemory, OPENING_LIMIT_MS, WHOLE_LIMIT_MS } from "./import-worker";
import { closeGate } from "./write-gate";

/** Memory of the thread, in MB: as much as a reader of files has, and what writing takes beside. */
const MEMORY_MB = 352;
/** Rows that are read stay until they are written, so much room for what doesn't would only lie idle. */
const YOUNG_MEMORY_MB = 16;

/** The file was too much for its reader, as a preview of it says. */
const HEAVY: ImportSaid = { kind: "written", outcome: "nothing-ready" };

/** What whoever started the writing thread is asked and told. */
interface Starter {
  isStopped(): "stopped" | "going";
  /** Told when the gate is closed and the thread may write. */
  writes(): void;
}

/** Starts the writing thread on a task, closes the gate for as long as it writes, and says what came of it. */
export function startWriter(task: ImportTask, starter: Starter): Promise<ImportSaid> {
  const boot = path.join(/* turbopackIgnore: true */ process.cwd(), "app", "_server", "worker", "boot.mjs");
  const numbers = new Int32Array(new SharedArrayBuffer(12));
  const given: GivenTask = { ...task, reading: numbers.buffer as SharedArrayBuffer };
  const worker = new Worker(boot, {
    execArgv: [],
    workerData: given,
    resourceLimits: { maxOldGenerationSizeMb: MEMORY_MB, maxYoungGenerationSizeMb: YOUNG_MEMORY_MB },
  });
  return new Promise((resolve) => {
    let open = () => {};
    let ended = false;
    let said: ImportSaid = { kind: "failed", reason: "the writing thread ended" };
    // Nothing is written before it is ready, so that it may be ended at any time until then.
    let state: "reading" | "ready" = "reading";
    const heavy = (): void => {
      said = HEAVY;
      void worker.terminate();
    };
    const isOpening = () => task.kind === "import" && Atomics.load(numbers, PROGRESS.phase) === PHASES.opening;
    const opening = setTimeout(() => isOpening() && heavy(), OPENING_LIMIT_MS);
    const whole = setTimeout(heavy, WHOLE_LIMIT_MS);
    const isRead = (): void => {
      state = "ready";
      clearTimeout(opening);
      clearTimeout(whole);
    };
    worker.on("message", async (message: ImportSaid) => {
      isRead();
      if (message.kind !== "ready") {
        said = message;
        // Its connection is closed; a reader of files that it has started would keep it.
        void worker.terminate();
        return;
      }
      open = await closeGate();
      if (ended) {
        open();
        return;
      }
      if (starter.isStopped() === "stopped") {
        said = { kind: "stopped" };
        void worker.terminate();
        return;
      }
      starter.writes();
      worker.postMessage("go");
    });
    worker.on("error", (error) => {
      said = state === "reading" && isOutOfMemory(error) ? HEAVY : { kind: "failed", reason: error.message };
    });
    // The gate opens only when the thread has closed its connection.
    worker.on("exit", () => {
      ended = true;
      isRead();
      open();
      resolve(said);
    });
  });
}
