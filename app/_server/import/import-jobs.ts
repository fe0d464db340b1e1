import { refusedPreview } from "@/lib/ingest/refused-preview";
import type { ImportPage } from "@/lib/report/form-model";
import type { Viewer } from "../gate";
import { loadAcademyRules } from "../season/student-record";
import { fileContext, findImportDraft, type ImportHead, readingKey } from "./import-desk";
import { buildPreviewPage } from "./import-page";
import { type FileRun, startFile } from "./import-worker";

/** The reading of one upload. */
interface Job {
  readonly key: string;
  readonly run: FileRun;
  readonly patienceMs: number;
  /** Null while it is being read. */
  page: ImportPage | null;
  state: "running" | "done" | "stopped" | "failed";
}

export type JobView =
  | { readonly state: "done"; readonly page: ImportPage }
  | { readonly state: "running"; readonly phase: number; readonly read: number; readonly of: number }
  | { readonly state: "stopped" }
  | { readonly state: "failed" };

/** Uploads whose page is kept in memory, so that looking again is no new reading. */
const KEPT = 20;
/** A page waits so long for a long file before it shows how far the reading is. */
const PATIENCE_MS = 2500;
/** And so long for a short one, which takes this only on a very busy machine. */
const SHORT_PATIENCE_MS = 20_000;
/** A file of more letters than this (base64) is long. */
const LONG_FILE = 1_000_000;

const KEY = Symbol.for("proofband.import-jobs");
const shared = globalThis as { [KEY]?: Map<string, Job> };

function jobs(): Map<string, Job> {
  shared[KEY] ??= new Map();
  return shared[KEY];
}

const jobId = (viewer: Viewer, draftId: string): string => `${viewer.scope.academyId} ${draftId}`;

function begin(viewer: Viewer, draftId: string, key: string): Job | null {
  const draft = findImportDraft(viewer, draftId);
  if (!draft) return null;
  const run = startFile({ ...fileContext(viewer), draft, draftId, want: "page" });
  const patienceMs = draft.file.length > LONG_FILE ? PATIENCE_MS : SHORT_PATIENCE_MS;
  const job: Job = { key, run, patienceMs, page: null, state: "running" };
  run.result.then(
    (result) => {
      const rules = () => loadAcademyRules(viewer.db, viewer.scope, viewer.academy);
      job.page =
        result.kind === "page"
          ? result.page
          : buildPreviewPage({ words: viewer.words, ...rules() }, draftId, draft, refusedPreview("heavy"));
      job.state = "done";
    },
    () => {
      if (job.state !== "stopped") job.state = "failed";
    },
  );
  return job;
}

function viewOf({ state, page, run }: Job): JobView {
  if (state === "done" && page) return { state, page };
  if (state === "stopped") return { state };
  return state === "running" ? { state, ...run.progress() } : { state: "failed" };
}

/** How the reading of an upload stands, begun anew when what it rests on has changed; null: its file is gone. */
export async function followImport(viewer: Viewer, draftId: string, head: ImportHead): Promise<JobView | null> {
  const id = jobId(viewer, draftId);
  const key = readingKey(fileContext(viewer), head);
  let job = jobs().get(id);
  if (job?.key !== key) {
    job?.run.stop();
    const begun = begin(viewer, draftId, key);
    if (!begun) return null;
    job = begun;
  }
  jobs().delete(id);
  jobs().set(id, job);
  for (const [other, kept] of jobs()) {
    if (jobs().size <= KEPT) break;
    if (kept.state !== "running") jobs().delete(other);
  }
  if (job.state === "running") await Promise.race([job.run.result.catch(() => null), patience(job)]);
  return viewOf(job);
}

function patience({ patienceMs }: Job): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, patienceMs).unref());
}

/** How far the reading is, without beginning one; null: none was begun. */
export function peekImport(viewer: Viewer, draftId: string): JobView | null {
  const job = jobs().get(jobId(viewer, draftId));
  return job ? viewOf(job) : null;
}

/** Ends the reading; the upload and its answers stay. */
export function stopImport(viewer: Viewer, draftId: string): void {
  const job = jobs().get(jobId(viewer, draftId));
  if (job?.state !== "running") return;
  job.state = "stopped";
  job.run.stop();
}

/** Lets go of what is known of an upload, so that the next look reads it anew. */
export function forgetJob(viewer: Viewer, draftId: string): void {
  stopImport(viewer, draftId);
  jobs().delete(jobId(viewer, draftId));
}

/** The same for all uploads of an academy: what was read of them may name somebody who was erased since. */
export function forgetJobs(academyId: string): void {
  for (const [id, job] of jobs()) {
    if (!id.startsWith(`${academyId} `)) continue;
    if (job.state === "running") {
      job.state = "stopped";
      job.run.stop();
    }
    jobs().delete(id);
  }
}
