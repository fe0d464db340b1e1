"use server";

import { notFound, redirect } from "next/navigation";
import { requireStudent } from "../../../../../../_server/gate";
import { saveMove } from "../../../../../../_server/session/move-desk";

/** Gives a session to another student, or comes back with what is wrong. */
export async function submitMove(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/sessions/[sessionId]/move submitMove",
    String(data.get("studentId") ?? ""),
  );
  const sessionId = String(data.get("sessionId") ?? "");
  const outcome = await saveMove(viewer, { kind: "move", sessionId }, data);
  if (outcome.kind === "not-there") notFound();
  if (outcome.kind === "saved") redirect(`/students/${outcome.studentId}/sessions/${outcome.sessionId}?told=moved`);
  const page = `/students/${viewer.student.studentId}/sessions/${encodeURIComponent(sessionId)}`;
  redirect(`${page}/move?draft=${outcome.draftId}`);
}
