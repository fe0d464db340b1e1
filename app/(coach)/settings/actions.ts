"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../_server/gate";
import { saveSettings } from "../../_server/settings/settings-desk";
import { chooseAcademy } from "../../_server/viewer";

export async function submitSettings(data: FormData): Promise<void> {
  const outcome = saveSettings(await requireViewer(), data);
  redirect(outcome.kind === "saved" ? "/settings" : `/settings?draft=${outcome.draftId}`);
}

/** Shows the demo, or the own academy again. */
export async function switchAcademy(): Promise<void> {
  const viewer = await requireViewer();
  await chooseAcademy(viewer.choice === "demo" ? "own" : "demo");
  redirect("/students");
}
