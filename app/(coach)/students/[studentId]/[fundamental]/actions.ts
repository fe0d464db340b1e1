"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { whenDiskFails } from "../../../../_server/door/when-disk-fails";
import { requireStudent } from "../../../../_server/gate";
import { decideAsking } from "../../../../_server/season/asking-desk";

/** Stops a question, takes it up again, or takes the plan that would settle it. */
export async function submitAsking(data: FormData): Promise<void> {
  const viewer = await requireStudent(
    "/students/[studentId]/[fundamental] submitAsking",
    String(data.get("studentId") ?? ""),
  );
  const student = `/students/${viewer.student.studentId}`;
  const page = await whenDiskFails(student, () => decideAsking(viewer, data));
  revalidatePath(page);
  redirect(page);
}
