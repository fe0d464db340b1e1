"use server";

import { redirect } from "next/navigation";
import { requireStudent, requireViewer } from "../../../_server/gate";
import { addGroup, answerGroup, keepGroup } from "../../../_server/session/group-desk";
import { answerNote, groupNote, settleNote } from "../../../_server/session/note-desk";

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

export async function askGroupNote(studentId: string, data: FormData) {
  return answerNote(await requireStudent(studentId), data, groupNote(studentId));
}

export async function showGroupNote(studentId: string, data: FormData): Promise<void> {
  const viewer = await requireStudent(studentId);
  const draftId = keepGroup(viewer, settleNote(viewer, data, groupNote(studentId)));
  redirect(`/record/group?draft=${draftId}#note-${studentId}`);
}
