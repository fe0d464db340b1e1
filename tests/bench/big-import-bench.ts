import { mkdtempSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { monitorEventLoopDelay } from "node:perf_hooks";
import { closeDatabases } from "@/app/_server/database";
import { admitMachine, type Viewer } from "@/app/_server/gate";
import { keepUpload } from "@/app/_server/import/import-desk";
import { type ImportJob, progressOf, startImport, startUndo } from "@/app/_server/import/write-jobs";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { startOwnAcademy } from "@/app/_server/settings/own-academy";
import { bigFile, enterBigStudents } from "./big-file";
import type { Measured } from "./measured";

/** The server's thread may be held so long by an import, 99 of 100 times: a page that waits so long feels prompt still. */
const HELD_BOUND_MS = 200;
const ASKED_EVERY_MS = 1000;

interface Phase {
  readonly state: string;
  readonly milliseconds: number;
  readonly held: { readonly p99: number; readonly max: number; readonly count: number };
  readonly roster: readonly number[];
  readonly memory: number;
}

/** Watches the thread and asks for the roster until a job ends, one phase for each state that it passes through. */
async function watchJob(viewer: Viewer, job: ImportJob): Promise<readonly Phase[]> {
  const phases: Phase[] = [];
  let state = job.state;
  let delay = monitorEventLoopDelay({ resolution: 5 });
  let [from, roster, memory] = [performance.now(), [] as number[], 0];
  delay.enable();
  const close = () => {
    delay.disable();
    const held = { p99: delay.percentile(99) / 1e6, max: delay.max / 1e6, count: delay.count };
    phases.push({ state, milliseconds: performance.now() - from, held, roster, memory });
    state = job.state;
    delay = monitorEventLoopDelay({ resolution: 5 });
    [from, roster, memory] = [performance.now(), [], 0];
    delay.enable();
  };
  let asked = 0;
  let ended = false;
  void job.finished.then(() => {
    ended = true;
  });
  while (!ended) {
    if (job.state !== state) close();
    memory = Math.max(memory, process.memoryUsage.rss() / 1e6);
    if (performance.now() - asked > ASKED_EVERY_MS && job.state !== "done") {
      asked = performance.now();
      await loadRoster(viewer, { sort: undefined, page: undefined });
      roster.push(performance.now() - asked);
    }
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  close();
  return phases;
}

function figuresOf(what: string, phases: readonly Phase[], memory: number): Measured[] {
  return phases
    .filter((phase) => ["reading", "writing", "judging"].includes(phase.state))
    .flatMap((phase): Measured[] => {
      const roster = [...phase.roster].sort((a, b) => a - b);
      const also = `${(phase.milliseconds / 1000).toFixed(1)} s, RSS +${Math.round(phase.memory - memory)} MB`;
      const held = {
        what: `${what}, ${phase.state}: the server's thread is held, 99 of 100 and longest`,
        times: phase.held.count,
        median: phase.held.p99,
        slowest: phase.held.max,
        also,
        bound: HELD_BOUND_MS,
      };
      const page = {
        what: `${what}, ${phase.state}: the roster's model meanwhile`,
        times: roster.length,
        median: roster[Math.floor(roster.length / 2)] ?? Number.NaN,
        slowest: roster.at(-1) ?? Number.NaN,
        also: "",
        bound: null,
      };
      return roster.length === 0 ? [held] : [held, page];
    });
}

/** What the server's thread and a page feel of an import of so many readings, and of its undo. */
export async function bigImportFigures(readings: number): Promise<readonly Measured[]> {
  const folder = mkdtempSync(path.join(os.tmpdir(), "proofband-bench-"));
  process.env.PROOFBAND_DATA = folder;
  try {
    await startOwnAcademy({ name: "Bench", ownerName: "Bench", zone: "Europe/Berlin", locale: "en" });
    const viewer = await admitMachine({ choice: "own", locale: null });
    if (!viewer) throw new Error("no academy was started");
    const file = bigFile(readings, 1);
    enterBigStudents(viewer, file.aliases);
    await loadRoster(viewer, { sort: undefined, page: undefined });
    const draftId = keepUpload(viewer, "big.csv", file.bytes);
    const before = process.memoryUsage.rss() / 1e6;
    const job = startImport(viewer, draftId, { door: "page", who: "Bench" });
    const phases = await watchJob(viewer, job);
    if (job.outcome !== "imported" || progressOf(job).settled !== file.rows)
      throw new Error(`${job.state} ${job.outcome} ${job.failure}: ${progressOf(job).settled} of ${file.rows}`);
    const undo = startUndo(viewer, job.batchId, file.rows);
    const undone = await watchJob(viewer, undo);
    if (undo.outcome !== "undone") throw new Error(`${undo.state} ${undo.outcome} ${undo.failure}`);
    const rows = file.rows.toLocaleString("en");
    return [
      ...figuresOf(`import of ${rows} readings`, phases, before),
      ...figuresOf(`undo of ${rows} readings`, undone, before),
    ];
  } finally {
    closeDatabases();
    rmSync(folder, { recursive: true, force: true });
  }
}
