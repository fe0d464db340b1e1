"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../../_server/gate";
import { saveKeeping } from "../../../_server/settings/keeping-desk";

/** Keeps what the academy says about keeping. */
export async function submitKeeping(data: FormData): Promise<void> {
  const outcome = saveKeeping(await requireViewer("/settings/privacy submitKeeping"), data);
  redirect(outcome.kind === "saved" ? "/settings/privacy" : `/settings/privacy?draft=${outcome.draftId}`);
}
