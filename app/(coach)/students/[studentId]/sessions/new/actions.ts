"use server";

import { redirect } from "next/navigation";
import { requireStudent } from "../../../../../_server/gate";
import { addSession } from "../../../../../_server/session-desk";

export async function submitSession(data: FormData): Promise<void> {
  const viewer = await requireStudent(String(data.get("studentId") ?? ""));
  const outcome = await addSession(viewer, data);
  const page = `/students/${viewer.student.studentId}`;
  redirect(outcome.kind === "added" ? page : `${page}/sessions/new?draft=${outcome.draftId}`);
}
