"use server";

import { redirect } from "next/navigation";
import { requireStudent } from "../../../../_server/gate";
import { setGoal } from "../../../../_server/goals/goal-desk";

/** Sets a band of one student's from a day on. */
export async function submitGoal(data: FormData): Promise<void> {
  const viewer = await requireStudent("/students/[studentId]/goals submitGoal", String(data.get("studentId") ?? ""));
  const outcome = await setGoal(viewer, data);
  redirect(
    outcome.kind === "set" ? outcome.path : `/students/${viewer.student.studentId}/goals?draft=${outcome.draftId}`,
  );
}
