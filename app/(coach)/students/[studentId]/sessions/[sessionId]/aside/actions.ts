"use server";

import { notFound, redirect } from "next/navigation";
import { requireStudent } from "../../../../../../_server/gate";
import { saveAside } from "../../../../../../_server/session/aside-desk";

/** Sets a session or one of its films aside, or brings it back, or comes back with what is wrong. */
export async function submitAside(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/sessions/[sessionId]/aside submitAside",
    String(data.get("studentId") ?? ""),
  );
  const sessionId = String(data.get("sessionId") ?? "");
  const outcome = await saveAside(viewer, sessionId, data);
  if (outcome.kind === "not-there") notFound();
  const page = `/students/${viewer.student.studentId}/sessions/${encodeURIComponent(sessionId)}/aside`;
  const of = String(data.get("of") ?? "");
  const query = new URLSearchParams(outcome.kind === "saved" ? { part: outcome.part } : { draft: outcome.draftId });
  if (of !== "") query.set("of", of);
  redirect(`${page}${outcome.kind === "saved" ? "/done" : ""}?${query}`);
}
