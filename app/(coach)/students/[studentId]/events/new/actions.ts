"use server";

import { redirect } from "next/navigation";
import { requireStudent } from "../../../../../_server/gate";
import { addEvent } from "../../../../../_server/season/event-desk";

/** Records what happened to a student. */
export async function submitEvent(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/events/new submitEvent",
    String(data.get("studentId") ?? ""),
  );
  const outcome = await addEvent(viewer, data);
  const page = `/students/${viewer.student.studentId}/events`;
  redirect(outcome.kind === "added" ? `${page}/${outcome.eventId}` : `${page}/new?draft=${outcome.draftId}`);
}
