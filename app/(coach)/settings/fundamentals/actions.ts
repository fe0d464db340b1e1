"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../../_server/gate";
import { addDefinition } from "../../../_server/settings/definition-desk";

/** Defines a fundamental of the academy's own. */
export async function submitDefinition(data: FormData): Promise<void> {
  const outcome = addDefinition(await requireViewer("/settings/fundamentals submitDefinition"), data);
  redirect(
    outcome.kind === "kept"
      ? `/settings/fundamentals/${encodeURIComponent(outcome.id)}`
      : `/settings/fundamentals?draft=${outcome.draftId}`,
  );
}
