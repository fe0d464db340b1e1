"use server";

import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../../../_server/door/when-disk-fails";
import { drawLot } from "../../../../../_server/fair/lot-desk";
import { requireStudent } from "../../../../../_server/gate";
import { fillDose, giveDrill } from "../../../../../_server/season/drill-desk";

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

/** Fills in the dose of the drill that is chosen, and keeps what else was typed. */
export async function fillDoseAnew(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/drills/new fillDoseAnew",
    String(data.get("studentId") ?? ""),
  );
  redirect(`/students/${viewer.student.studentId}/drills/new?draft=${fillDose(viewer, data)}`);
}

/** Lets the lot say which of two drills a student gets. */
export async function pressLot(data: FormData): Promise<void> {
  const viewer = await requireStudent("/students/[studentId]/drills/new pressLot", String(data.get("studentId") ?? ""));
  const page = `/students/${viewer.student.studentId}/drills/new`;
  await whenDiskFails(page, () => drawLot(viewer, data));
  redirect(page);
}
