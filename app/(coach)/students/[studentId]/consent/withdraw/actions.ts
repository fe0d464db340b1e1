"use server";

import { redirect } from "next/navigation";
import { withdrawConsent } from "../../../../../_server/consent/consent-desk";
import { requireStudent } from "../../../../../_server/gate";

/** Takes a consent back. */
export async function submitWithdrawal(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/consent/withdraw submitWithdrawal",
    String(data.get("studentId") ?? ""),
  );
  const outcome = withdrawConsent(viewer, data);
  const page = `/students/${viewer.student.studentId}/consent`;
  redirect(outcome.kind === "saved" ? page : `${page}/withdraw?draft=${outcome.draftId}`);
}
