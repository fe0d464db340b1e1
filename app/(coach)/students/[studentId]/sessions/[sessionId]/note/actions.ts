"use server";

import { notFound, redirect } from "next/navigation";
import { whenDiskFails } from "../../../../../../_server/door/when-disk-fails";
import { requireStudent } from "../../../../../../_server/gate";
import { tapNote } from "../../../../../../_server/session/load-note";

/** Says something of a phrase of a session's note, and shows the note as it is read now. */
export async function submitNoteTap(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/sessions/[sessionId]/note submitNoteTap",
    String(data.get("studentId") ?? ""),
  );
  const sessionId = String(data.get("sessionId") ?? "");
  const page = `/students/${viewer.student.studentId}/sessions/${encodeURIComponent(sessionId)}/note`;
  if ((await whenDiskFails(page, () => tapNote(viewer, sessionId, data))) === "not-there") notFound();
  redirect(page);
}
