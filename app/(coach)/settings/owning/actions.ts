"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../../_server/gate";
import { setOwning } from "../../../_server/goals/owning-desk";

/** Sets the academy's owning rule from a day on. */
export async function submitOwning(data: FormData): Promise<void> {
  const outcome = setOwning(await requireViewer("/settings/owning submitOwning"), data);
  redirect(outcome.kind === "set" ? "/settings/owning" : `/settings/owning?draft=${outcome.draftId}`);
}
