"use server";

import { redirect } from "next/navigation";
import { requireStudent } from "../../../../../_server/gate";
import { giveDrill } from "../../../../../_server/season/drill-desk";

/** Gives a drill to a student. */
export async function submitDrill(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/drills/new submitDrill",
    String(data.get("studentId") ?? ""),
  );
  const outcome = giveDrill(viewer, data);
  const page = `/students/${viewer.student.studentId}/drills`;
  redirect(outcome.kind === "given" ? `${page}/${outcome.assignmentId}` : `${page}/new?draft=${outcome.draftId}`);
}
