"use server";

import { notFound, redirect } from "next/navigation";
import { requireViewer } from "../../../_server/gate";
import { gatherAnswers, withoutSource } from "../../../_server/import/import-answers";
import { dropImport, findImportHead, keepAnswers } from "../../../_server/import/import-desk";
import { forgetJob, stopImport } from "../../../_server/import/import-jobs";
import { forgetSource } from "../../../_server/import/import-source";
import { awaitJob, startImport } from "../../../_server/import/write-jobs";

/** Keeps the answers; with the button that imports, writes what is ready. */
export async function answerImport(data: FormData): Promise<void> {
  const viewer = await requireViewer();
  const draftId = String(data.get("draftId") ?? "");
  const intent = data.get("intent");
  const head = findImportHead(viewer, draftId);
  if (!head) notFound();
  const page = `/import/${draftId}`;
  if (intent === "drop") {
    forgetJob(viewer, draftId);
    dropImport(viewer, draftId);
    redirect("/import");
  }
  if (intent === "stop") stopImport(viewer, draftId);
  if (intent === "read") forgetJob(viewer, draftId);
  if (intent === "stop" || intent === "read") redirect(page);
  const { answers, columns } = gatherAnswers(head, data);
  const kept = intent === "forget" ? withoutSource(answers) : answers;
  if (intent === "forget") forgetSource(viewer, String(data.get("source") ?? ""));
  keepAnswers(viewer, draftId, head, kept);
  if (intent !== "import" || columns === "changed") redirect(page);
  const job = startImport(viewer, draftId, { door: "page", who: viewer.name });
  await awaitJob(job);
  if (job.outcome === "nothing-ready") redirect(page);
  if (job.state === "done") forgetJob(viewer, draftId);
  redirect(`${page}/done`);
}
