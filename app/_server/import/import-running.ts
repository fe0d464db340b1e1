import type { RunningImport } from "@/lib/report/past-import-model";
import type { Words } from "@/lib/words/catalogue";
import { requireViewer, type Viewer } from "../gate";
import { findJob, type ImportJob, progressOf } from "./write-jobs";

const ENDED = new Set<ImportJob["state"]>(["done", "stopped", "failed"]);

function sayState(words: Words, job: ImportJob): string {
  const number = (count: number): string => count.toLocaleString("en");
  const { settled, total } = progressOf(job);
  if (job.state !== "writing") return words.say(`running.${job.state}`);
  if (job.kind === "undo") return words.say("running.undo");
  return words.say("running.writing", { settled: number(settled), total: number(total) });
}

/** How far an import, or the undo of one, is; null: there is nothing to tell that its own page doesn't tell better. */
export function loadRunning(viewer: Viewer, id: string): RunningImport | null {
  const job = findJob(viewer, id);
  if (!job || (job.state === "done" && job.outcome !== "")) return null;
  const { words } = viewer;
  const ended = ENDED.has(job.state);
  const there = job.kind === "import" ? `/import/${id}` : `/import/past/${id}`;
  const waits = job.kind === "import" && ["waiting", "reading", "writing"].includes(job.state);
  return {
    title: words.say(`running.${job.kind}.title`),
    margin: words.say("running.margin"),
    says: sayState(words, job),
    explains: ended ? "" : words.say("running.explains"),
    again: ended
      ? { href: there, label: words.say("running.on") }
      : { href: job.kind === "import" ? `${there}/done` : there, label: words.say("running.again") },
    poll: `/api/import/${id}/state`,
    stop: waits ? { draftId: id, label: words.say("running.stop") } : null,
    ended: ended ? "yes" : "no",
  };
}

/** How far an import is, as data: what is said, and whether the page is to be asked for anew. */
export async function tellRunning(id: string): Promise<Response> {
  const viewer = await requireViewer("GET /api/import/[draftId]/state");
  const running = loadRunning(viewer, id);
  return Response.json({ says: running?.says ?? "", ended: running?.ended ?? "yes" });
}
