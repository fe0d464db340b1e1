"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../_server/gate";
import { startFromForm } from "../../_server/settings/settings-desk";
import { chooseAcademy } from "../../_server/viewer";

export async function submitStart(data: FormData): Promise<void> {
  const outcome = await startFromForm(await requireViewer(), data);
  if (outcome.kind === "refused") redirect(`/start?draft=${outcome.draftId}`);
  await chooseAcademy("own");
  redirect("/students");
}
