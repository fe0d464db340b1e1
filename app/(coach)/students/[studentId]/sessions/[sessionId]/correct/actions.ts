"use server";

import { notFound, redirect } from "next/navigation";
import { requireStudent } from "../../../../../../_server/gate";
import { saveCorrection } from "../../../../../../_server/session/correct-desk";

/** Corrects readings of a session, or comes back with what is wrong. */
export async function submitCorrection(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/sessions/[sessionId]/correct submitCorrection",
    String(data.get("studentId") ?? ""),
  );
  const sessionId = String(data.get("sessionId") ?? "");
  const outcome = await saveCorrection(viewer, sessionId, data);
  if (outcome.kind === "not-there") notFound();
  const page = `/students/${viewer.student.studentId}/sessions/${encodeURIComponent(sessionId)}`;
  redirect(outcome.kind === "saved" ? `${page}?told=corrected` : `${page}/correct?draft=${outcome.draftId}`);
}
