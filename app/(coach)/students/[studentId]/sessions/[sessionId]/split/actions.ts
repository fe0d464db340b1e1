"use server";

import { notFound, redirect } from "next/navigation";
import { requireStudent } from "../../../../../../_server/gate";
import { saveMove } from "../../../../../../_server/session/move-desk";

/** Makes a session of its own of some swings, or comes back with what is wrong. */
export async function submitSplit(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/sessions/[sessionId]/split submitSplit",
    String(data.get("studentId") ?? ""),
  );
  const sessionId = String(data.get("sessionId") ?? "");
  const outcome = await saveMove(viewer, { kind: "split", sessionId }, data);
  if (outcome.kind === "not-there") notFound();
  if (outcome.kind === "saved") redirect(`/students/${outcome.studentId}/sessions/${outcome.sessionId}?told=split`);
  const page = `/students/${viewer.student.studentId}/sessions/${encodeURIComponent(sessionId)}`;
  redirect(`${page}/split?draft=${outcome.draftId}`);
}
