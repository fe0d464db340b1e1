"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../../_server/door/when-disk-fails";
import { requireStudent } from "../../../../_server/gate";
import { undoChange } from "../../../../_server/session/load-history";

/** Undoes one change of the record, or says why that can't be. */
export async function submitUndo(data: FormData): Promise<void> {
  const viewer = await requireStudent("/students/[studentId]/history submitUndo", String(data.get("studentId") ?? ""));
  const page = `/students/${viewer.student.studentId}/history`;
  const told = await whenDiskFails(page, () => undoChange(viewer, data));
  redirect(`${page}?told=${told}`);
}
