"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../../../_server/door/when-disk-fails";
import { requireStudent } from "../../../../../_server/gate";
import { undoChange } from "../../../../../_server/session/load-history";

/** Undoes a change that the session's page shows; what came of it stands with all changes of the student. */
export async function submitUndo(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/sessions/[sessionId] submitUndo",
    String(data.get("studentId") ?? ""),
  );
  const page = `/students/${viewer.student.studentId}/history`;
  const told = await whenDiskFails(page, () => undoChange(viewer, data));
  redirect(`${page}?told=${told}`);
}
