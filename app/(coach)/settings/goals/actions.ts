"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../../_server/gate";
import { setGoal } from "../../../_server/goals/goal-desk";

/** Sets a band of the academy's, or of those of an age in it, from a day on. */
export async function submitAcademyGoal(data: FormData): Promise<void> {
  const outcome = await setGoal(await requireViewer("/settings/goals submitAcademyGoal"), data);
  redirect(outcome.kind === "set" ? outcome.path : `/settings/goals?draft=${outcome.draftId}`);
}
