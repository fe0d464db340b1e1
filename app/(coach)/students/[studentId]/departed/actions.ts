"use server";

import { redirect } from "next/navigation";
import { saveDeparture } from "../../../../_server/consent/consent-desk";
import { requireStudent } from "../../../../_server/gate";

/** Says on which day a student left, or that the student is here. */
export async function submitDeparture(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/departed submitDeparture",
    String(data.get("studentId") ?? ""),
  );
  const outcome = saveDeparture(viewer, data);
  const page = `/students/${viewer.student.studentId}`;
  redirect(outcome.kind === "saved" ? `${page}/consent` : `${page}/departed?draft=${outcome.draftId}`);
}
