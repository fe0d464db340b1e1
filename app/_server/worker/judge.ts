import { parentPort } from "node:worker_threads";
import type { Task } from "./tasks";
import { work } from "./work";

parentPort?.on("message", ({ id, task }: { readonly id: number; readonly task: Task }) => {
  try {
    parentPort?.postMessage({ id, result: work(task) });
  } catch (error) {
    parentPort?.postMessage({ id, failure: error instanceof Error ? error.message : String(error) });
  }
});
