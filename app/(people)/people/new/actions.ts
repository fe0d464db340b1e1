"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../../_server/gate";
import { invite } from "../../../_server/people/invite-desk";

export async function submitInvitation(data: FormData): Promise<void> {
  const outcome = invite(await requireViewer("/people/new submitInvitation"), data);
  redirect(outcome.kind === "invited" ? `/people?made=${outcome.id}` : `/people/new?draft=${outcome.draftId}`);
}
