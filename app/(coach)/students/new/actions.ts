"use server";

import { redirect } from "next/navigation";
import { requireViewer } from "../../../_server/gate";
import { addStudent } from "../../../_server/season/student-desk";

export async function submitStudent(data: FormData): Promise<void> {
  const outcome = addStudent(await requireViewer("/students/new submitStudent"), data);
  redirect(outcome.kind === "added" ? `/students/${outcome.studentId}` : `/students/new?draft=${outcome.draftId}`);
}
