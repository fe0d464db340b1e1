"use server";

import { redirect } from "next/navigation";
import { requireStudent } from "../../../../_server/gate";
import { startReadBack } from "../../../../_server/season/read-back-desk";

/** Draws earlier films to be read for a fundamental. */
export async function submitReadBackWish(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/read-back submitReadBackWish",
    String(data.get("studentId") ?? ""),
  );
  const outcome = startReadBack(viewer, data);
  const page = `/students/${viewer.student.studentId}/read-back`;
  if (outcome.kind === "started") redirect(`${page}/${outcome.readBackId}`);
  redirect(outcome.kind === "refused" ? `${page}?draft=${outcome.draftId}` : page);
}
