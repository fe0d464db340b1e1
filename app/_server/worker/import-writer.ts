import { once } from "node:events";
import { parentPort, workerData } from "node:worker_threads";
import { undoImport } from "@/db/write/undo-import";
import { currentInstant } from "../clock";
import { closeDatabases } from "../database";
import { admitAs, type Viewer } from "../gate";
import { findImportDraft } from "../import/import-desk";
import type { FileReading } from "../import/import-worker";
import { findScopes, writeImport } from "../import/write-import";
import type { FileMessage, PlanPart } from "./file-tasks";
import { type GivenTask, type ImportSaid, SHARED } from "./import-task";
import { joined } from "./joined-plan";
import { readArchiveFile } from "./read-archive-file";
import { readTableFile } from "./read-table-file";

class Stopped extends Error {}

function say(said: ImportSaid): void {
  parentPort?.postMessage(said);
}

async function turn(): Promise<void> {
  if (!parentPort) throw new Error("the writing thread was started by nobody");
  const go = once(parentPort, "message");
  say({ kind: "ready" });
  await go;
}

/**
 * Reads on this very thread, whose memory and time are limited until it writes: a reader of its own would hold the program,
 * the file and the plan a second time.
 */
function readingHere(numbers: Int32Array): FileReading {
  const collect = (parts: PlanPart[]) => (message: FileMessage) => {
    if (message.kind === "part") for (const part of message.part) parts.push(part);
  };
  return {
    async table(task) {
      const parts: PlanPart[] = [];
      return joined(await readTableFile(task, numbers, collect(parts)), parts);
    },
    async archive(task) {
      const parts: PlanPart[] = [];
      return joined(readArchiveFile(task, numbers, collect(parts)), parts);
    },
  };
}

async function importFile(viewer: Viewer, task: GivenTask & { readonly kind: "import" }): Promise<string> {
  const draft = findImportDraft(viewer, task.draftId);
  if (!draft) return "not-there";
  const seen = new Int32Array(task.shared);
  const { draftId, batchId, door, who } = task;
  const written = await writeImport(viewer, draft, {
    door,
    who,
    batchId,
    draftId,
    reading: readingHere(new Int32Array(task.reading)),
    async onReady(readings) {
      Atomics.store(seen, SHARED.total, readings);
      await turn();
    },
    onSettled(readings) {
      if (Atomics.load(seen, SHARED.stop) === 1) throw new Stopped();
      Atomics.store(seen, SHARED.settled, readings);
    },
  });
  return written.kind;
}

async function undoBatch(viewer: Viewer, batchId: string): Promise<string> {
  await turn();
  const who = { now: currentInstant(), who: viewer.name, scopeOf: findScopes(viewer) };
  return undoImport(viewer.db, viewer.scope, batchId, who).kind;
}

async function work(task: GivenTask): Promise<ImportSaid> {
  const viewer = await admitAs(task.choice, task.userId);
  if (!viewer || viewer.choice !== task.choice) throw new Error(`no such academy: ${task.choice}`);
  const outcome = task.kind === "import" ? await importFile(viewer, task) : await undoBatch(viewer, task.batchId);
  // Without waiting for anybody; what is left for the closing is little.
  viewer.db.sqlite.pragma("wal_checkpoint(PASSIVE)");
  return { kind: "written", outcome };
}

work(workerData as GivenTask)
  .catch(
    (error: unknown): ImportSaid =>
      error instanceof Stopped
        ? { kind: "stopped" }
        : { kind: "failed", reason: error instanceof Error ? error.message : String(error) },
  )
  .then((said) => {
    closeDatabases();
    say(said);
  });
