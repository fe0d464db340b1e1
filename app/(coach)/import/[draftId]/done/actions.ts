"use server";

import { notFound, redirect } from "next/navigation";
import { requireViewer } from "../../../../_server/gate";
import { awaitJob, findJob, stopJob } from "../../../../_server/import/write-jobs";

/** Stops an import that is on its way: nothing of it is saved, and its file is still there. */
export async function stopImport(data: FormData): Promise<void> {
  const viewer = await requireViewer("/import/[draftId]/done stopImport");
  const draftId = String(data.get("draftId") ?? "");
  const job = findJob(viewer, draftId);
  if (!job) notFound();
  stopJob(job);
  await awaitJob(job);
  redirect(`/import/${draftId}/done`);
}
