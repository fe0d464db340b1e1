import { parentPort } from "node:worker_threads";
import type { ArchiveTask, FileMessage, FileTask } from "./file-tasks";
import { readArchiveFile } from "./read-archive-file";
import { readTableFile } from "./read-table-file";

function tell(message: FileMessage): void {
  parentPort?.postMessage(message);
}

interface Asked {
  readonly task: FileTask | ArchiveTask;
  readonly numbers: Int32Array;
}

parentPort?.on("message", async ({ task, numbers }: Asked) => {
  try {
    const result = "onFile" in task ? readArchiveFile(task, numbers, tell) : await readTableFile(task, numbers, tell);
    tell({ kind: "end", result });
  } catch (error) {
    tell({ kind: "failure", message: error instanceof Error ? error.message : String(error) });
  }
});
