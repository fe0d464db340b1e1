"use server";

import { redirect } from "next/navigation";
import { requireStudent } from "../../../../_server/gate";
import { undoChange } from "../../../../_server/session/load-history";

/** Undoes one change of the record, or says why that can't be. */
export async function submitUndo(data: FormData): Promise<void> {
  const viewer = await requireStudent(String(data.get("studentId") ?? ""));
  const told = await undoChange(viewer, data);
  redirect(`/students/${viewer.student.studentId}/history?told=${told}`);
}
