"use server";

import { notFound, redirect } from "next/navigation";
import { requireViewer } from "../../../_server/gate";
import { confirmImport, dropImport, findImportDraft, keepAnswers } from "../../../_server/import-desk";
import { keepOutcome } from "../../../_server/import-outcome";

/** Keeps the answers; with the button that imports, writes what is ready. */
export async function answerImport(data: FormData): Promise<void> {
  const viewer = await requireViewer();
  const draftId = String(data.get("draftId") ?? "");
  const draft = findImportDraft(viewer, draftId);
  if (!draft) notFound();
  const answers = new Map<string, string>();
  for (const [name, value] of data)
    if (name.startsWith("answer") && typeof value === "string") answers.set(name, value);
  keepAnswers(viewer, draftId, draft, answers);
  if (data.get("intent") === "drop") {
    dropImport(viewer, draftId);
    redirect("/import");
  }
  if (data.get("intent") !== "import") redirect(`/import/${draftId}`);
  const outcome = await confirmImport(viewer, { ...draft, answers: [...answers] });
  if (outcome.kind === "nothing-ready") redirect(`/import/${draftId}`);
  keepOutcome(viewer, draftId, outcome);
  redirect(`/import/${draftId}/done`);
}
