"use server";

import { notFound, redirect } from "next/navigation";
import { requireStudent } from "../../../../../../_server/gate";
import { saveFacts } from "../../../../../../_server/session/facts-desk";

/** Says the facts of a session anew, or comes back with what is wrong. */
export async function submitFacts(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/sessions/[sessionId]/facts submitFacts",
    String(data.get("studentId") ?? ""),
  );
  const sessionId = String(data.get("sessionId") ?? "");
  const outcome = await saveFacts(viewer, sessionId, data);
  if (outcome.kind === "not-there") notFound();
  const page = `/students/${viewer.student.studentId}/sessions/${encodeURIComponent(sessionId)}`;
  redirect(outcome.kind === "saved" ? `${page}?told=facts` : `${page}/facts?draft=${outcome.draftId}`);
}
