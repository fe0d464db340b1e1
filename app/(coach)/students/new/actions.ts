"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../../_server/gate";
import { addStudent, afterAdding } from "../../../_server/season/student-desk";

export async function submitStudent(data: FormData): Promise<void> {
  const viewer = await requireViewer("/students/new submitStudent");
  const outcome = addStudent(viewer, data);
  redirect(
    outcome.kind === "added" ? afterAdding(viewer, outcome.studentId, data) : `/students/new?draft=${outcome.draftId}`,
  );
}
