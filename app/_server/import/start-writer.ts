import path from "node:path";
import { Worker } from "node:worker_threads";
import type { ImportSaid, ImportTask } from "../worker/import-task";
import { closeGate } from "./write-gate";

/** What whoever started the writing thread is asked and told. */
interface Starter {
  isStopped(): "stopped" | "going";
  /** Told when the gate is closed and the thread may write. */
  writes(): void;
}

/** Starts the writing thread on a task, closes the gate for as long as it writes, and says what came of it. */
export function startWriter(task: ImportTask, starter: Starter): Promise<ImportSaid> {
  const boot = path.join(/* turbopackIgnore: true */ process.cwd(), "app", "_server", "worker", "boot.mjs");
  const worker = new Worker(boot, { execArgv: [], workerData: task });
  return new Promise((resolve) => {
    let open = () => {};
    let ended = false;
    let said: ImportSaid = { kind: "failed", reason: "the writing thread ended" };
    worker.on("message", async (message: ImportSaid) => {
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
      said = { kind: "failed", reason: error.message };
    });
    // The gate opens only when the thread has closed its connection.
    worker.on("exit", () => {
      ended = true;
      open();
      resolve(said);
    });
  });
}
