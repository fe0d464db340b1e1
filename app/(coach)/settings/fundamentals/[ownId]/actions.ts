"use server";

import { notFound, redirect } from "next/navigation";
import { requireViewer } from "../../../../_server/gate";
import { changeDefinition } from "../../../../_server/settings/definition-desk";

/** Changes the definition of a fundamental of the academy's own, for films from today on. */
export async function submitDefinitionChange(data: FormData): Promise<void> {
  const viewer = await requireViewer("/settings/fundamentals/[ownId] submitDefinitionChange");
  const id = String(data.get("fundamental") ?? "");
  const outcome = changeDefinition(viewer, id, data);
  if (outcome.kind === "unknown") notFound();
  const page = `/settings/fundamentals/${encodeURIComponent(id)}`;
  redirect(outcome.kind === "kept" ? page : `${page}?draft=${outcome.draftId}`);
}
