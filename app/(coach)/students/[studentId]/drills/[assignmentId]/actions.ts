"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../../../_server/door/when-disk-fails";
import { requireStudent } from "../../../../../_server/gate";
import { moveDrillBack, stopDrill } from "../../../../../_server/season/drill-desk";

/** Stops a drill. */
export async function submitDrillStop(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/drills/[assignmentId] submitDrillStop",
    String(data.get("studentId") ?? ""),
  );
  const assignmentId = String(data.get("assignmentId") ?? "");
  const outcome = stopDrill(viewer, assignmentId, data);
  const page = `/students/${viewer.student.studentId}/drills/${encodeURIComponent(assignmentId)}`;
  redirect(outcome.kind === "refused" ? `${page}?draft=${outcome.draftId}` : page);
}

/** Takes a given drill back, or puts it back. */
export async function submitDrillBack(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/drills/[assignmentId] submitDrillBack",
    String(data.get("studentId") ?? ""),
  );
  const assignmentId = String(data.get("assignmentId") ?? "");
  const page = `/students/${viewer.student.studentId}/drills/${encodeURIComponent(assignmentId)}`;
  await whenDiskFails(page, () => moveDrillBack(viewer, assignmentId, data.get("wish") === "put" ? "put" : "take"));
  redirect(page);
}
