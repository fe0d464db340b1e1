"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../../../_server/gate";
import { changeClubs } from "../../../../_server/settings/club-desk";

/** Records a split, merge, new name or new list of the club groups. */
export async function submitClubs(data: FormData): Promise<void> {
  const outcome = await changeClubs(await requireViewer("/settings/clubs/change submitClubs"), data);
  if (outcome.kind !== "refused") redirect("/settings/clubs");
  redirect(`/settings/clubs/change?draft=${outcome.draftId}`);
}
