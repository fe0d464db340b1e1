"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../../_server/gate";
import { addGroup, answerGroup, keepGroup } from "../../../_server/session/group-desk";

export async function submitGroup(data: FormData): Promise<void> {
  const outcome = await addGroup(await requireViewer(), data);
  redirect(
    outcome.kind === "added"
      ? `/record/group/saved?group=${outcome.groupId}`
      : `/record/group?draft=${outcome.draftId}`,
  );
}

export async function askGroup(data: FormData) {
  return answerGroup(await requireViewer(), data);
}

export async function showGroup(data: FormData): Promise<void> {
  redirect(`/record/group?draft=${keepGroup(await requireViewer(), data)}`);
}
