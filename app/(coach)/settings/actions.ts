"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../_server/gate";
import { saveSettings } from "../../_server/settings/settings-desk";

export async function submitSettings(data: FormData): Promise<void> {
  const outcome = saveSettings(await requireViewer("/settings submitSettings"), data);
  redirect(outcome.kind === "saved" ? "/settings" : `/settings?draft=${outcome.draftId}`);
}
