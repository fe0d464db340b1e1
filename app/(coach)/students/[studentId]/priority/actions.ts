"use server";

import { redirect } from "next/navigation";
import { requireStudent } from "../../../../_server/gate";
import { choosePriorityByCoach } from "../../../../_server/season/priority-desk";

/** Puts a fundamental in hand, or lets the order of work choose again. */
export async function submitPriority(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/priority submitPriority",
    String(data.get("studentId") ?? ""),
  );
  const outcome = choosePriorityByCoach(viewer, data);
  const page = `/students/${viewer.student.studentId}`;
  redirect(
    outcome.kind === "chosen" ? `${page}?club=${outcome.clubGroup}` : `${page}/priority?draft=${outcome.draftId}`,
  );
}
