"use server";

import { notFound, redirect } from "next/navigation";
import { whenDiskFails } from "../../../_server/door/when-disk-fails";
import { requireViewer, type Viewer } from "../../../_server/gate";
import { gatherAnswers, withoutSource } from "../../../_server/import/import-answers";
import { dropImport, findImportHead, keepAnswers } from "../../../_server/import/import-desk";
import { forgetJob, stopImport } from "../../../_server/import/import-jobs";
import { forgetSource } from "../../../_server/import/import-source";
import { awaitJob, startImport } from "../../../_server/import/write-jobs";

/** Keeps the answers; with the button that imports, writes what is ready. */
export async function answerImport(data: FormData): Promise<void> {
  const viewer = await requireViewer("/import/[draftId] answerImport");
  const draftId = String(data.get("draftId") ?? "");
  redirect(await whenDiskFails(`/import/${draftId}`, () => takeAnswers(viewer, draftId, data)));
}

/** Returns where that leads. */
async function takeAnswers(viewer: Viewer, draftId: string, data: FormData): Promise<string> {
  const intent = data.get("intent");
  const head = findImportHead(viewer, draftId);
  if (!head) notFound();
  const page = `/import/${draftId}`;
  if (intent === "drop") {
    forgetJob(viewer, draftId);
    dropImport(viewer, draftId);
    return "/import";
  }
  if (intent === "stop") stopImport(viewer, draftId);
  if (intent === "read") forgetJob(viewer, draftId);
  if (intent === "stop" || intent === "read") return page;
  const { answers, columns } = gatherAnswers(head, data);
  const kept = intent === "forget" ? withoutSource(answers) : answers;
  if (intent === "forget") forgetSource(viewer, String(data.get("source") ?? ""));
  keepAnswers(viewer, draftId, head, kept);
  if (intent !== "import" || columns === "changed") return page;
  const job = startImport(viewer, draftId, { door: "page", who: viewer.name });
  await awaitJob(job);
  if (job.outcome === "nothing-ready") return page;
  if (job.state === "done") forgetJob(viewer, draftId);
  return `${page}/done`;
}
