"use server";

import { redirect } from "next/navigation";
import { decideDrill, pageAfter } from "../../../../../../_server/drill/decide-desk";
import { requireStudent } from "../../../../../../_server/gate";

/** Decides about a drill, and leads to what follows. */
export async function submitDrillDecision(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/drills/[assignmentId]/decide submitDrillDecision",
    String(data.get("studentId") ?? ""),
  );
  const { studentId } = viewer.student;
  const assignmentId = String(data.get("assignmentId") ?? "");
  const outcome = decideDrill(viewer, assignmentId, data);
  redirect(
    outcome.kind === "decided"
      ? pageAfter(studentId, assignmentId, outcome)
      : `/students/${studentId}/drills/${encodeURIComponent(assignmentId)}/decide?draft=${outcome.draftId}`,
  );
}
