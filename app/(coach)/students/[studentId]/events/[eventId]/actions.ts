"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../../../_server/door/when-disk-fails";
import { requireStudent } from "../../../../../_server/gate";
import { changeRebaselines, moveEventBack } from "../../../../../_server/season/event-desk";

/** Says which tracks begin anew at an event. */
export async function submitRebaselines(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/events/[eventId] submitRebaselines",
    String(data.get("studentId") ?? ""),
  );
  const eventId = String(data.get("eventId") ?? "");
  const outcome = await changeRebaselines(viewer, eventId, data);
  const page = `/students/${viewer.student.studentId}/events/${encodeURIComponent(eventId)}`;
  redirect(outcome.kind === "refused" ? `${page}?draft=${outcome.draftId}` : page);
}

/** Takes an event back, or puts it back. */
export async function submitEventBack(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/events/[eventId] submitEventBack",
    String(data.get("studentId") ?? ""),
  );
  const eventId = String(data.get("eventId") ?? "");
  const page = `/students/${viewer.student.studentId}/events/${encodeURIComponent(eventId)}`;
  await whenDiskFails(page, () => moveEventBack(viewer, eventId, data.get("wish") === "put" ? "put" : "take"));
  redirect(page);
}
