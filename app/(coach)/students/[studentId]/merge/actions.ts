"use server";

import { notFound, redirect } from "next/navigation";
import { requireStudent } from "../../../../_server/gate";
import { saveMove } from "../../../../_server/session/move-desk";

/** Makes one student of two, or comes back with what is wrong. */
export async function submitMerge(data: FormData): Promise<void> {
  const viewer = await requireStudent("/students/[studentId]/merge submitMerge", String(data.get("studentId") ?? ""));
  const outcome = await saveMove(viewer, { kind: "merge", sessionId: null }, data);
  if (outcome.kind === "not-there") notFound();
  if (outcome.kind === "saved") redirect(`/students/${outcome.studentId}/history?told=merged`);
  redirect(`/students/${viewer.student.studentId}/merge?draft=${outcome.draftId}`);
}
