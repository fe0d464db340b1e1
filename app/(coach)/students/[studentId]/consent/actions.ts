"use server";

import { redirect } from "next/navigation";
import { giveConsent } from "../../../../_server/consent/consent-desk";
import { requireStudent } from "../../../../_server/gate";

/** Records a consent that was given. */
export async function submitConsent(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/consent submitConsent",
    String(data.get("studentId") ?? ""),
  );
  const outcome = giveConsent(viewer, data);
  const page = `/students/${viewer.student.studentId}/consent`;
  redirect(outcome.kind === "saved" ? page : `${page}?draft=${outcome.draftId}`);
}
