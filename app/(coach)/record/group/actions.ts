"use server";

import { redirect } from "next/navigation";
import { whileSignedIn } from "../../../_server/access/while-signed-in";
import { whenDiskFails } from "../../../_server/door/when-disk-fails";
import { requireStudent, requireViewer } from "../../../_server/gate";
import { addGroup, answerGroup, keepGroup } from "../../../_server/session/group-desk";
import { answerNote, groupNote, settleNote } from "../../../_server/session/note-desk";

export async function submitGroup(data: FormData): Promise<void> {
  const outcome = await addGroup(await requireViewer("/record/group submitGroup"), data);
  redirect(
    outcome.kind === "added"
      ? `/record/group/saved?group=${outcome.groupId}`
      : `/record/group?draft=${outcome.draftId}`,
  );
}

export async function askGroup(data: FormData) {
  return whileSignedIn([], async () => answerGroup(await requireViewer("/record/group askGroup"), data));
}

export async function showGroup(data: FormData): Promise<void> {
  redirect(`/record/group?draft=${keepGroup(await requireViewer("/record/group showGroup"), data)}`);
}

export async function askGroupNote(studentId: string, data: FormData) {
  return whileSignedIn(null, async () =>
    answerNote(await requireStudent("/record/group askGroupNote", studentId), data, groupNote(studentId)),
  );
}

export async function showGroupNote(studentId: string, data: FormData): Promise<void> {
  const viewer = await requireStudent("/record/group showGroupNote", studentId);
  const settled = await whenDiskFails("/record/group", () => settleNote(viewer, data, groupNote(studentId)));
  const draftId = keepGroup(viewer, settled);
  redirect(`/record/group?draft=${draftId}#note-${studentId}`);
}
